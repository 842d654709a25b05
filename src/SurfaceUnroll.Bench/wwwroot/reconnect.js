// Comes back by itself when the bench was stopped and started, or the laptop was closed.
'use strict';
(() => {
  const dialog = document.getElementById('components-reconnect-modal');
  let trying = false;
  const retry = async () => {
    if (trying) return;
    trying = true;
    for (;;) {
      try {
        // False: the bench is there, but knows this page no more, so it is loaded anew. All that was typed is in the job file.
        if (await Blazor.reconnect()) break;
        location.reload();
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
    else if (state === 'rejected') location.reload();
  });
  document.addEventListener('visibilitychange', () => { if (!document.hidden && dialog.open) retry(); });
})();
