// A photo on which points are tapped and dragged. It can be come nearer to with two fingers, the wheel or buttons, and moved with one finger. Where it is seen from is known here alone.
export const attach = (svg, page) => new Stage(svg, page);

class Stage {
  constructor(svg, page) {
    Object.assign(this, { svg, page, fingers: new Map(), held: null, keyed: null, next: null, sending: null, stop: new AbortController(), width: Number(svg.dataset.width), height: Number(svg.dataset.height) });
    this.view = { x: 0, y: 0, w: this.width, h: this.height };
    const on = (name, act, more) => svg.addEventListener(name, act, { signal: this.stop.signal, ...more });
    on('pointerdown', e => this.down(e));
    on('pointermove', e => this.move(e));
    on('pointerup', e => this.up(e));
    on('pointercancel', e => this.lose(e));
    on('wheel', e => { e.preventDefault(); this.zoomAt(this.place(e), e.deltaY < 0 ? 1.25 : 0.8); }, { passive: false });
    on('keydown', e => this.key(e));
    on('focusout', () => { this.keyed = null; });
    this.watch = new ResizeObserver(() => this.fit());
    this.watch.observe(svg);
    this.fit();
    // Until now a tap would have been lost; from here on the pointer is a cross.
    svg.dataset.ready = '';
  }

  /** Pixel of the photo under an event. */
  place(e) {
    const at = new DOMPoint(e.clientX, e.clientY).matrixTransform(this.svg.getScreenCTM().inverse());
    return { x: at.x, y: at.y };
  }

  /** Points are as large on the screen however near one is; those that were drawn anew too. */
  fit() {
    const matrix = this.svg.getScreenCTM();
    if (!matrix || !matrix.a) return;
    for (const size of this.svg.querySelectorAll('.size')) size.setAttribute('transform', `scale(${1 / matrix.a})`);
  }

  look({ x, y, w, h }) {
    w = Math.min(w, this.width);
    h = Math.min(h, this.height);
    x = Math.max(0, Math.min(this.width - w, x));
    y = Math.max(0, Math.min(this.height - h, y));
    this.view = { x, y, w, h };
    this.svg.setAttribute('viewBox', `${x} ${y} ${w} ${h}`);
    this.fit();
  }

  zoomAt(at, by) {
    const { x, y, w, h } = this.view, nearest = 60;
    const to = Math.max(nearest, Math.min(this.width, w / by)), share = to / w;
    this.look({ x: at.x - (at.x - x) * share, y: at.y - (at.y - y) * share, w: to, h: h * share });
  }

  zoom(by) { const { x, y, w, h } = this.view, on = this.focused(); this.zoomAt(on ?? { x: x + w / 2, y: y + h / 2 }, by); }

  whole() { this.look({ x: 0, y: 0, w: this.width, h: this.height }); }

  middle() { const { x, y, w, h } = this.view; this.send('Put', x + w / 2, y + h / 2); }

  // The point that was worked on last, to come nearer to.
  focused() {
    const handle = this.last === undefined ? null : this.svg.querySelector(`[data-handle="${this.last}"]`);
    return handle && { x: Number(handle.dataset.x), y: Number(handle.dataset.y) };
  }

  down(e) {
    if (e.button > 0) return;
    e.preventDefault();
    this.svg.setPointerCapture(e.pointerId);
    this.fingers.set(e.pointerId, { x: e.clientX, y: e.clientY });
    if (this.fingers.size > 1) {
      // A second finger: not a tap and not a drag, but coming nearer.
      if (this.held?.handle) this.draw(this.held, this.held.from);
      this.held = { pinch: this.spread() };
      return;
    }
    const handle = e.target.closest('[data-handle]'), at = this.place(e);
    handle?.focus({ preventScroll: true });
    const from = handle && { x: Number(handle.dataset.x), y: Number(handle.dataset.y) };
    this.held = { handle, from, to: from, off: from && { x: from.x - at.x, y: from.y - at.y }, start: { x: e.clientX, y: e.clientY }, at, moved: false };
    if (handle) this.last = Number(handle.dataset.handle);
  }

  move(e) {
    if (!this.fingers.has(e.pointerId)) return;
    this.fingers.set(e.pointerId, { x: e.clientX, y: e.clientY });
    const held = this.held;
    if (!held) return;
    if (held.pinch) {
      const now = this.spread();
      if (this.fingers.size < 2 || !now.far) return;
      const middle = this.place({ clientX: now.x, clientY: now.y });
      this.zoomAt(middle, now.far / held.pinch.far);
      held.pinch = now;
      return;
    }
    // A hand is not still while it taps.
    if (!held.moved && Math.hypot(e.clientX - held.start.x, e.clientY - held.start.y) < 6) return;
    held.moved = true;
    const at = this.place(e);
    if (held.handle) this.draw(held, this.kept({ x: at.x + held.off.x, y: at.y + held.off.y }));
    else this.look({ ...this.view, x: this.view.x + held.at.x - at.x, y: this.view.y + held.at.y - at.y });
  }

  up(e) {
    if (!this.fingers.delete(e.pointerId)) return;
    const held = this.held;
    if (held?.pinch) { if (!this.fingers.size) this.held = null; return; }
    this.held = null;
    if (!held) return;
    // Whoever taps beside a point means another one.
    const beside = !held.handle || Math.hypot(held.off.x, held.off.y) * this.svg.getScreenCTM().a > 12;
    if (held.handle && held.moved) this.moveTo(Number(held.handle.dataset.handle), held.to);
    else if (beside && !held.moved) {
      this.last = undefined;
      this.send('Add', held.at.x, held.at.y);
    }
  }

  lose(e) {
    this.fingers.delete(e.pointerId);
    if (this.held?.handle) this.draw(this.held, this.held.from);
    this.held = null;
  }

  key(e) {
    const handle = e.target.closest('[data-handle]');
    const way = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }[e.key];
    if (!handle || e.ctrlKey || e.metaKey) return;
    this.last = Number(handle.dataset.handle);
    if (e.key === 'Delete') { e.preventDefault(); this.send('Remove', this.last); return; }
    if (!way) return;
    e.preventDefault();
    // A pixel of the screen, or of the photo where that is more; with the shift key ten, with the alt key a quarter of one of the photo.
    const by = e.altKey ? 0.25 : Math.max(1, 1 / this.svg.getScreenCTM().a) * (e.shiftKey ? 10 : 1);
    // From where the last key put it: what the bench says meanwhile is of an earlier one.
    if (this.keyed?.index !== this.last) this.keyed = { index: this.last, x: Number(handle.dataset.x), y: Number(handle.dataset.y) };
    const to = this.kept({ x: this.keyed.x + by * way[0], y: this.keyed.y + by * way[1] });
    Object.assign(this.keyed, to);
    this.draw({ handle }, to);
    this.moveTo(this.last, to);
  }

  kept({ x, y }) { return { x: Math.max(0, Math.min(this.width, x)), y: Math.max(0, Math.min(this.height, y)) }; }

  draw(held, to) {
    held.to = to;
    held.handle.setAttribute('transform', `translate(${to.x} ${to.y})`);
    held.handle.dataset.x = to.x;
    held.handle.dataset.y = to.y;
  }

  spread() {
    const [a, b] = [...this.fingers.values()];
    return b ? { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2, far: Math.hypot(a.x - b.x, a.y - b.y) } : { far: 0 };
  }

  // One move is on its way at a time; the newest waits, older ones are dropped.
  moveTo(index, to) {
    this.next = [index, to.x, to.y];
    this.sending ||= (async () => {
      try {
        while (this.next) {
          const move = this.next;
          this.next = null;
          await this.page.invokeMethodAsync('Move', ...move);
        }
      } catch { /* Out of reach, the page says so. */ }
      this.sending = null;
    })();
  }

  // Out of reach, the page says so.
  send(...what) { this.page.invokeMethodAsync(...what).catch(() => {}); }

  dispose() { this.stop.abort(); this.watch.disconnect(); }
}
