// Measures, in the page itself, the time from a key or a move of the finger to the picture that answers it.
let since = null;
const times = [];
let count = 0;

/** A change begins; only the first of those not answered yet counts. */
export const begin = at => { since ??= at; };

/** All that was changed so far is on the screen once this frame is painted. */
export const painted = () => requestAnimationFrame(() => {
  const start = since;
  since = null;
  if (start === null) return;
  // The frame is drawn after this call, so the next turn of the loop comes after it.
  const channel = new MessageChannel();
  channel.port1.onmessage = () => tell(performance.now() - start);
  channel.port2.postMessage(null);
});

function tell(time) {
  times.push(time);
  count++;
  if (times.length > 200) times.shift();
  const sorted = [...times].sort((a, b) => a - b);
  const line = document.getElementById('timing');
  if (!line) return;
  line.textContent = `last change shown after ${time.toFixed(0)} ms, middle of ${times.length}: ${sorted[sorted.length >> 1].toFixed(0)} ms`;
  line.dataset.last = time.toFixed(1);
  line.dataset.count = count;
  line.dataset.all = times.map(t => t.toFixed(1)).join(' ');
}

addEventListener('input', e => begin(e.timeStamp), { capture: true });
