// Measures, in the page itself, the time from a key or a move of the finger to the picture that answers it.
let waiting = [];
const times = [];
let count = 0;

/**
 * A change begins. One that was sent with a version (set on what is returned) is answered by a picture of that version or a later one; without, by the next picture.
 */
export const begin = (at, version = 0) => {
  const change = { at, version };
  // What was answered by words alone, such as a fault, gets no picture.
  waiting = waiting.filter(w => at - w.at < 3000);
  waiting.push(change);
  return change;
};

/**
 * The picture of a version is on the screen once this frame is painted. Told is how long ago the change was made that it shows; of moves that came too fast,
 * those between are never shown by themselves, and how long the first of them waited is kept beside it.
 */
export const painted = version => requestAnimationFrame(() => {
  const answered = waiting.filter(w => w.version <= version);
  if (answered.length === 0) return;
  waiting = waiting.filter(w => !answered.includes(w));
  const first = Math.min(...answered.map(w => w.at)), moves = answered.filter(w => w.version > 0).map(w => w.at);
  const start = moves.length === answered.length ? Math.max(...moves) : first;
  // The frame is drawn after this call, so the next turn of the loop comes after it.
  const channel = new MessageChannel();
  channel.port1.onmessage = () => tell(performance.now() - start, performance.now() - first);
  channel.port2.postMessage(null);
});

function tell(time, waited) {
  times.push(time);
  count++;
  if (times.length > 200) times.shift();
  const sorted = [...times].sort((a, b) => a - b);
  const line = document.getElementById('timing');
  if (!line) return;
  line.textContent = `last change shown after ${time.toFixed(0)} ms, middle of ${times.length}: ${sorted[sorted.length >> 1].toFixed(0)} ms`;
  Object.assign(line.dataset, { last: time.toFixed(1), waited: waited.toFixed(1), count });
}

addEventListener('input', e => begin(e.timeStamp), { capture: true });
