// The first script of the night page. The build puts it at the head of that page, before its styles, since a script
// behind them waits for them; so it is no part of what the framework knows.
import { nodeOf } from './drawn';
import { AWAKE, EARLY_ANSWER, type EarlyStart, nameOfQuestion } from './early-start';

function openEarly(file: string): void {
  // What leads to another view than the first screen is not answered.
  const name = location.hash === '' ? nameOfQuestion({ now: Date.now(), language: navigator.language }) : '';
  const worker = new Worker(file, { name });
  const start: EarlyStart = { worker, answer: null };
  globalThis.heavyAirStart = start;
  worker.addEventListener('error', (event) => {
    event.preventDefault();
    start.worker = null;
  });
  worker.addEventListener('message', ({ data }) => {
    if (!('drawn' in data)) return;
    start.answer = nodeOf(data.drawn);
    const awake = document.documentElement.hasAttribute(AWAKE);
    if (!awake) document.querySelector('main')?.replaceWith(start.answer);
    dispatchEvent(new Event(EARLY_ANSWER));
  });
}

try {
  openEarly(process.env.PLANNER_FILE ?? '');
} catch {
  // The page goes on without.
}
