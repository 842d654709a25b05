// Points of a drawing under the finger, the mouse or the arrow keys. One move is on its way to the bench at a time; the newest waits, older ones are dropped.
import { begin } from './timing.js';

export const attach = (svg, page) => new Drag(svg, page);

/** Puts the cursor into a field as soon as it is there. */
export const focus = (id, tries = 20) => {
  const field = document.getElementById(id);
  if (field) { field.focus(); field.select?.(); }
  else if (tries > 0) requestAnimationFrame(() => focus(id, tries - 1));
};

class Drag {
  constructor(svg, page) {
    Object.assign(this, { svg, page, held: null, next: null, changes: [], sending: false, stop: new AbortController() });
    const on = (name, act) => svg.addEventListener(name, act, { signal: this.stop.signal });
    on('pointerdown', e => this.take(e));
    on('pointermove', e => this.move(e));
    on('pointerup', () => this.letGo());
    on('pointercancel', () => this.letGo());
    on('lostpointercapture', () => this.letGo());
    on('keydown', e => this.key(e));
    on('focusout', () => { if (this.held?.byKeys) this.letGo(); });
    on('click', e => this.tap(e));
  }

  /** Place of an event in the drawing, mm, up the page counting as up. */
  place(e) {
    const at = new DOMPoint(e.clientX, e.clientY).matrixTransform(this.svg.getScreenCTM().inverse());
    return { x: at.x, y: -at.y };
  }

  get step() { return Number(this.svg.dataset.step) || 0.1; }

  round(mm) { return Math.round(mm / this.step) * this.step; }

  take(e) {
    const handle = e.target.closest('[data-handle]');
    if (!handle || e.button > 0 || this.held?.pointer !== undefined) return;
    e.preventDefault();
    handle.focus({ preventScroll: true });
    handle.setPointerCapture(e.pointerId);
    const at = this.place(e), x = Number(handle.dataset.x), y = Number(handle.dataset.y);
    // The finger may have taken the point beside its middle: it keeps that distance.
    this.hold({ index: Number(handle.dataset.handle), pointer: e.pointerId, offX: x - at.x, offY: y - at.y, x, y });
  }

  move(e) {
    if (!this.held || this.held.pointer !== e.pointerId) return;
    const at = this.place(e);
    this.to(at.x + this.held.offX, at.y + this.held.offY, e.timeStamp);
  }

  key(e) {
    const handle = e.target.closest('[data-handle]');
    const way = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] }[e.key];
    if (!handle) return;
    if (e.ctrlKey || e.metaKey) { if (this.held?.byKeys) this.letGo(); return; }
    const index = Number(handle.dataset.handle);
    if (e.key === 'Delete') { e.preventDefault(); this.letGo(); this.page.invokeMethodAsync('Remove', index); return; }
    if (!way) return;
    e.preventDefault();
    // A millimetre or 1/32; with the shift key ten times that, with the alt key the finest step.
    const by = this.step > 0.5 ? this.step : 1, far = e.shiftKey ? 10 * by : e.altKey ? this.step : by;
    if (this.held?.index !== index) this.hold({ index, byKeys: true, x: Number(handle.dataset.x), y: Number(handle.dataset.y) });
    this.to(this.held.x + way[0] * far, this.held.y + way[1] * far, e.timeStamp);
  }

  tap(e) {
    if (!e.target.closest('.touch')) return;
    const at = this.place(e);
    begin(e.timeStamp);
    this.page.invokeMethodAsync('Add', at.x, at.y);
  }

  hold(held) {
    this.letGo();
    this.held = held;
    this.svg.classList.add('held');
    this.page.invokeMethodAsync('Hold');
  }

  to(x, y, time) {
    x = this.round(x);
    y = this.round(y);
    const held = this.held;
    if (Math.abs(x - held.x) < 1e-9 && Math.abs(y - held.y) < 1e-9) return;
    Object.assign(held, { x, y });
    this.changes.push(begin(time, Infinity));
    this.next = [held.index, x, y];
    this.sending ||= this.send();
  }

  async send() {
    try {
      while (this.next) {
        const move = this.next, changes = this.changes;
        this.next = null;
        this.changes = [];
        const version = await this.page.invokeMethodAsync('Move', ...move);
        for (const change of changes) change.version = version;
      }
    } catch { /* The bench is out of reach; the page says so. */ }
    this.sending = null;
  }

  async letGo() {
    if (!this.held) return;
    this.held = null;
    this.svg.classList.remove('held');
    await this.sending;
    if (!this.held) this.page.invokeMethodAsync('Release').catch(() => {});
  }

  dispose() { this.stop.abort(); }
}
