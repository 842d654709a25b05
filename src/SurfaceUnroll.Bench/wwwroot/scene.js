// The formed sheet in space, or the blank in its plane: turned with a finger, the mouse or the arrow keys, drawn only when something changed.
import * as THREE from './three/three.module.js';
import { OrbitControls } from './three/orbit.js';
import { painted } from './timing.js';

export const create = host => {
  try { return new Scene(host); } catch { return new Blind(host); }
};

/** Stands in where the browser draws nothing in space; everything else of the page goes on. */
class Blind {
  constructor(host) {
    host.replaceChildren(Object.assign(document.createElement('p'), { className: 'note', textContent: 'This browser draws no pictures in space (WebGL is off or missing). Everything else works: the verdict, the blanks and the files are the same.' }));
  }
  show({ version }) { painted(version); }
  rule() {}
  look() {}
  dispose() {}
}

const colour = name => new THREE.Color(getComputedStyle(document.documentElement).getPropertyValue(name).trim());

/** Whether a graphics chip draws; where the processor does it, smooth rims would cost more than they are worth. */
const lookForChip = () => {
  const gl = document.createElement('canvas').getContext('webgl2'), names = gl?.getExtension('WEBGL_debug_renderer_info');
  const name = gl?.getParameter(names ? names.UNMASKED_RENDERER_WEBGL : gl.RENDERER) ?? '';
  gl?.getExtension('WEBGL_lose_context')?.loseContext();
  return !/swiftshader|llvmpipe|software/i.test(name);
};

let chip;

class Scene {
  constructor(host) {
    this.host = host;
    chip ??= lookForChip();
    this.renderer = new THREE.WebGLRenderer({ antialias: chip && devicePixelRatio < 2, alpha: true });
    this.renderer.setPixelRatio(chip ? Math.min(devicePixelRatio, 2) : 1);
    const canvas = this.canvas = this.renderer.domElement;
    canvas.tabIndex = 0;
    canvas.setAttribute('role', 'img');
    canvas.setAttribute('aria-label', 'The sheet, still being worked out.');
    host.append(canvas);
    this.words = document.createElement('div');
    this.words.className = 'words';
    this.words.setAttribute('aria-hidden', 'true');
    host.append(this.words);
    this.scene = new THREE.Scene();
    this.camera = new THREE.OrthographicCamera(-1, 1, 1, -1, -1e5, 1e5);
    this.camera.up.set(0, 0, 1);
    this.light = new THREE.DirectionalLight(0xffffff, 2.2);
    this.scene.add(this.light, this.light.target, new THREE.AmbientLight(0xffffff, 1.1));
    this.controls = new OrbitControls(this.camera, canvas);
    this.controls.addEventListener('change', () => this.draw());
    this.controls.addEventListener('start', () => { this.touched = true; });
    canvas.addEventListener('keydown', e => this.key(e));
    this.box = new THREE.Box3();
    this.side = 'fit';
    // Outside cool, inside warm, as in the printed pictures; flat facets show each strip between element lines as it is.
    const common = { flatShading: true, polygonOffset: true, polygonOffsetFactor: 1, polygonOffsetUnits: 1 };
    this.outside = new THREE.MeshLambertMaterial({ ...common, side: THREE.FrontSide });
    this.inside = new THREE.MeshLambertMaterial({ ...common, side: THREE.BackSide });
    this.metal = new THREE.BufferGeometry();
    this.rims = new THREE.LineSegments(new THREE.BufferGeometry(), new THREE.LineBasicMaterial());
    this.lines = new THREE.LineSegments(new THREE.BufferGeometry(), new THREE.LineBasicMaterial({ transparent: true, opacity: 0.75 }));
    this.scene.add(new THREE.Mesh(this.metal, this.outside), new THREE.Mesh(this.metal, this.inside), this.rims, this.lines);
    for (const child of this.scene.children) child.frustumCulled = false;
    this.recolour = () => { this.tint(); this.draw(); };
    document.addEventListener('bench-looks', this.recolour);
    this.sizes = new ResizeObserver(() => this.resize());
    this.sizes.observe(host);
    this.tint();
  }

  tint() {
    this.rims.material.color = colour('--ink');
    this.lines.material.color = colour('--element');
    if (this.tinted) return;
    this.outside.color = colour('--outside');
    this.inside.color = colour('--inside');
  }

  show({ corners, faces, colours, rims, lines, labels, flat, caption, version, ruled }) {
    const floats = bytes => new Float32Array(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength));
    const places = geometry => geometry.setAttribute.bind(geometry, 'position');
    for (const geometry of [this.metal, this.rims.geometry, this.lines.geometry]) geometry.dispose();
    places(this.metal)(new THREE.BufferAttribute(floats(corners), 3));
    this.metal.setIndex(new THREE.BufferAttribute(new Uint32Array(faces.buffer.slice(faces.byteOffset, faces.byteOffset + faces.byteLength)), 1));
    places(this.rims.geometry)(new THREE.BufferAttribute(floats(rims), 3));
    places(this.lines.geometry)(new THREE.BufferAttribute(floats(lines), 3));
    const tinted = colours.length > 0;
    if (tinted) this.metal.setAttribute('color', new THREE.BufferAttribute(Uint8Array.from(colours), 3, true));
    else this.metal.deleteAttribute('color');
    if (tinted !== this.tinted) {
      this.tinted = tinted;
      for (const material of [this.outside, this.inside]) {
        material.vertexColors = tinted;
        if (tinted) material.color.set(0xffffff);
        material.needsUpdate = true;
      }
      if (!tinted) this.tint();
    }
    this.lines.visible = ruled;
    this.labels = labels;
    this.words.replaceChildren(...labels.map(label => Object.assign(document.createElement('span'), { className: label.kind, textContent: label.text })));
    this.canvas.setAttribute('aria-label', `${caption}. Arrow keys turn it, plus and minus zoom.`);
    const box = new THREE.Box3().setFromBufferAttribute(this.metal.attributes.position);
    const grown = this.box.isEmpty() || Math.abs(this.sizeOf(box) / this.sizeOf(this.box) - 1) > 0.15 || flat !== this.flat;
    this.box = box;
    if (flat !== this.flat) {
      this.flat = flat;
      this.controls.enableRotate = !flat;
      this.controls.mouseButtons.LEFT = flat ? THREE.MOUSE.PAN : THREE.MOUSE.ROTATE;
      this.controls.touches.ONE = flat ? THREE.TOUCH.PAN : THREE.TOUCH.ROTATE;
    }
    // A view that somebody has chosen stays while the sheet changes under it.
    if (grown || !this.touched) this.look(this.side);
    this.draw();
    painted(version);
  }

  /** Shows the element lines or leaves them out. */
  rule(ruled) {
    this.lines.visible = ruled;
    this.draw();
  }

  sizeOf(box) { return box.getSize(new THREE.Vector3()).length() || 1; }

  look(side) {
    this.side = side;
    this.touched = false;
    const from = this.flat ? [0, 0, 1] : { fit: [-0.75, 0.8, 0.62], front: [-1, 0, 0.001], side: [0, 1, 0.001], top: [-0.001, 0, 1] }[side];
    const centre = this.box.getCenter(new THREE.Vector3()), size = this.sizeOf(this.box);
    this.camera.up.set(0, this.flat ? 1 : 0, this.flat ? 0 : 1);
    this.controls.target.copy(centre);
    this.camera.position.copy(centre).addScaledVector(new THREE.Vector3(...from).normalize(), 2 * size);
    this.camera.lookAt(centre);
    this.camera.updateMatrixWorld();
    // As large as it goes: the box as the camera sees it.
    const seen = new THREE.Box3();
    for (let i = 0; i < 8; i++) {
      const corner = new THREE.Vector3(i & 1 ? this.box.max.x : this.box.min.x, i & 2 ? this.box.max.y : this.box.min.y, i & 4 ? this.box.max.z : this.box.min.z);
      seen.expandByPoint(corner.applyMatrix4(this.camera.matrixWorldInverse));
    }
    const { width, height } = this.room();
    const half = 0.56 * Math.max(seen.max.y - seen.min.y, (seen.max.x - seen.min.x) * height / width) || 1;
    this.half = half;
    this.camera.zoom = 1;
    this.frame();
    this.controls.update();
    this.draw();
  }

  room() { return { width: Math.max(1, this.host.clientWidth), height: Math.max(1, this.host.clientHeight) }; }

  frame() {
    const { width, height } = this.room(), half = this.half ?? 1;
    Object.assign(this.camera, { left: -half * width / height, right: half * width / height, top: half, bottom: -half, near: -20 * half, far: 20 * half + 4 * this.sizeOf(this.box) });
    this.camera.updateProjectionMatrix();
  }

  resize() {
    const { width, height } = this.room();
    this.renderer.setSize(width, height);
    if (!this.touched && !this.box.isEmpty()) this.look(this.side);
    else this.frame();
    // A new size empties the canvas, and this frame's turn to draw is over.
    this.paint();
  }

  key(e) {
    const turn = { ArrowLeft: [-0.15, 0], ArrowRight: [0.15, 0], ArrowUp: [0, -0.15], ArrowDown: [0, 0.15] }[e.key];
    const zoom = { '+': 1.2, '=': 1.2, '-': 1 / 1.2 }[e.key];
    if (!turn && !zoom) return;
    e.preventDefault();
    this.touched = true;
    if (zoom) { this.camera.zoom *= zoom; this.camera.updateProjectionMatrix(); }
    else if (this.flat) {
      const step = 0.3 * this.half / this.camera.zoom;
      const by = new THREE.Vector3(Math.sign(turn[0]) * step, -Math.sign(turn[1]) * step, 0);
      this.camera.position.add(by);
      this.controls.target.add(by);
    } else {
      const arm = this.camera.position.clone().sub(this.controls.target), ball = new THREE.Spherical().setFromVector3(new THREE.Vector3(arm.x, arm.z, -arm.y));
      ball.theta += turn[0];
      ball.phi = Math.min(Math.PI - 0.01, Math.max(0.01, ball.phi + turn[1]));
      const at = new THREE.Vector3().setFromSpherical(ball);
      this.camera.position.copy(this.controls.target).add(new THREE.Vector3(at.x, -at.z, at.y));
    }
    this.controls.update();
    this.draw();
  }

  /** Draws with the next frame, once for all that changed before it. */
  draw() {
    this.due ||= requestAnimationFrame(() => { this.due = 0; this.paint(); });
  }

  paint() {
    if (this.gone) return;
    // The light comes over the left shoulder of whoever looks.
    const eye = new THREE.Vector3(-0.55, 0.75, 1).applyQuaternion(this.camera.quaternion);
    this.light.target.position.copy(this.controls.target);
    this.light.position.copy(this.controls.target).addScaledVector(eye, 1000);
    this.renderer.render(this.scene, this.camera);
    const { width, height } = this.room(), at = new THREE.Vector3();
    (this.labels ?? []).forEach((label, i) => {
      at.set(label.x, label.y, label.z).project(this.camera);
      this.words.children[i].style.transform = `translate(${((at.x + 1) * width / 2).toFixed(1)}px, ${((1 - at.y) * height / 2).toFixed(1)}px)`;
    });
  }

  dispose() {
    this.gone = true;
    this.sizes.disconnect();
    document.removeEventListener('bench-looks', this.recolour);
    this.controls.dispose();
    this.metal.dispose();
    this.renderer.dispose();
    this.renderer.forceContextLoss();
  }
}
