// Points of a drawing moved with finger, mouse or arrow keys. One move at a time is on its way to the bench; while it is, only the newest waits.
import { begin } from './timing.js';

export const attach = (svg, bench) => new Drag(svg, bench);

class Drag {
  constructor(svg, bench) {
    this.svg = svg;
    this.bench = bench;
    this.stop = new AbortController();
    const on = (name, act) => svg.addEventListener(name, act, { signal: this.stop.signal });
    on('pointerdown', e => this.down(e));
    on('pointermove', e => { if (this.index !== null && e.pointerId === this.pointer) this.move(e, false); });
    on('pointerup', e => { if (this.index !== null && e.pointerId === this.pointer) this.up(e); });
    on('pointercancel', e => { if (this.index !== null) this.up(e); });
    on('keydown', e => this.key(e));
    this.index = null;
  }

  place(e) {
    const p = new DOMPoint(e.clientX, e.clientY).matrixTransform(this.svg.getScreenCTM().inverse());
    return [p.x, p.y];
  }

  down(e) {
    const handle = e.target.closest('[data-handle]');
    if (handle) {
      e.preventDefault();
      handle.focus({ preventScroll: true });
      this.svg.setPointerCapture(e.pointerId);
      this.index = Number(handle.dataset.handle);
      this.pointer = e.pointerId;
      this.moved = false;
    } else if (e.target.closest('[data-line]')) {
      begin(e.timeStamp);
      this.bench.invokeMethodAsync('Tapped', ...this.place(e));
    }
  }

  move(e, done) {
    begin(e.timeStamp);
    this.moved = true;
    this.next = [this.index, ...this.place(e), done];
    this.send();
  }

  up(e) {
    if (this.moved) this.move(e, true);
    this.index = null;
  }

  async send() {
    if (this.sending) return;
    this.sending = true;
    try {
      while (this.next) {
        const move = this.next;
        this.next = null;
        await this.bench.invokeMethodAsync('Moved', ...move);
      }
    } finally { this.sending = false; }
  }

  key(e) {
    const handle = e.target.closest('[data-handle]');
    const step = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] }[e.key];
    if (!handle || !step) return;
    e.preventDefault();
    begin(e.timeStamp);
    this.bench.invokeMethodAsync('Nudged', Number(handle.dataset.handle), ...step, e.shiftKey);
  }

  detach() { this.stop.abort(); }
}
