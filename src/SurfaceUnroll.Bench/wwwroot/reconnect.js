// Comes back by itself when the bench was stopped and started, or the laptop was closed.
'use strict';
(() => {
  const dialog = document.getElementById('components-reconnect-modal');
  const stash = 'bench-last-key';
  let trying = false;

  // What is typed while the bench is away reaches nobody, so the last field is kept here and typed again when the page has been loaded anew.
  let last = null;
  addEventListener('input', e => { if (e.target.id) last = { page: location.pathname, id: e.target.id, value: e.target.value }; }, { capture: true });
  const reload = () => {
    try { if (last) sessionStorage.setItem(stash, JSON.stringify(last)); } catch { /* a private window keeps nothing */ }
    location.reload();
  };
  const typeAgain = () => {
    let kept = null;
    try { kept = JSON.parse(sessionStorage.getItem(stash)); sessionStorage.removeItem(stash); } catch { /* nothing kept */ }
    if (kept?.page !== location.pathname) return;
    const look = new MutationObserver(() => {
      const field = document.getElementById(kept.id);
      if (!field) return;
      look.disconnect();
      if (field.value === kept.value || field.type === 'checkbox') return;
      field.value = kept.value;
      field.dispatchEvent(new Event('input', { bubbles: true }));
    });
    look.observe(document.body, { childList: true, subtree: true });
  };
  typeAgain();

  const retry = async () => {
    if (trying) return;
    trying = true;
    for (;;) {
      try {
        // False: the bench is there, but knows this page no more, so it is loaded anew. All that was typed is in the job file.
        if (await Blazor.reconnect()) break;
        reload();
        return;
      } catch { await new Promise(done => setTimeout(done, 1000)); }
    }
    trying = false;
  };
  dialog.addEventListener('components-reconnect-state-changed', e => {
    const state = e.detail.state;
    if (state === 'show') { if (!dialog.open) dialog.show(); }
    else if (state === 'hide') dialog.close();
    else if (state === 'failed') retry();
    else if (state === 'rejected') reload();
  });
  document.addEventListener('visibilitychange', () => { if (!document.hidden && dialog.open) retry(); });
})();
