// How the page looks on this device: light or dark, for the left or the right hand, with big targets. Runs before anything is drawn.
'use strict';
(() => {
  const root = document.documentElement;
  const kept = name => { try { return localStorage.getItem('bench-' + name); } catch { return null; } };
  const keep = (name, value) => { try { localStorage.setItem('bench-' + name, value); } catch { /* a private window keeps nothing */ } };
  const dark = () => kept('light') ? kept('light') === 'dark' : matchMedia('(prefers-color-scheme: dark)').matches;
  const apply = () => {
    root.dataset.theme = dark() ? 'dark' : 'light';
    root.dataset.hand = kept('hand') ?? 'right';
    root.dataset.targets = kept('big') ?? (matchMedia('(pointer: coarse)').matches ? 'big' : 'plain');
    document.dispatchEvent(new Event('bench-looks'));
  };
  matchMedia('(prefers-color-scheme: dark)').addEventListener('change', apply);
  window.benchLooks = {
    turn(what) {
      if (what === 'light') keep('light', dark() ? 'light' : 'dark');
      if (what === 'hand') keep('hand', root.dataset.hand === 'left' ? 'right' : 'left');
      if (what === 'big') keep('big', root.dataset.targets === 'big' ? 'plain' : 'big');
      apply();
    },
  };
  apply();

  // Undo and redo from anywhere but a field, which has its own.
  addEventListener('keydown', e => {
    if (!(e.ctrlKey || e.metaKey) || e.altKey || e.target.matches('input, textarea, select')) return;
    const key = e.key.toLowerCase(), name = key === 'y' || (key === 'z' && e.shiftKey) ? 'Redo' : key === 'z' ? 'Undo' : null;
    const button = name && document.querySelector(`.tools button[aria-label="${name}"]`);
    if (button) { e.preventDefault(); button.click(); }
  });
})();
