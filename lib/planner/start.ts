// The first script of the night page. The build puts it at the head of that page, before its styles, since a script
// behind them waits for them; so it is no part of what the framework knows.
import { keptNight } from '@/lib/store/kept-night';
import { nodeOf } from './drawn';
import { AWAKE, EARLY_ANSWER, type EarlyStart, nameOfQuestion } from './early-start';

/**
 * The face of the answer: words that were set in another move when it comes. Where it is still on its way once the page
 * is awake, the page's own answer stands there by then.
 */
const faceHere = () => document.fonts.load('600 1em "Heavy Air"');

/** What the worker's code may take on the way before the page's own no longer waits for it [ms]. */
const PATIENCE_MS = 1500;

/** The page's own scripts: the one that wakes it up, and those that one needs. */
const [WAKES = '', ...NEEDED] = JSON.parse(process.env.PAGE_FILES ?? '[]') as readonly string[];

let asked = false;

/** Asks for the page's own scripts, unless that is done. */
function wakeUp(): void {
  if (asked) return;
  asked = true;
  const script = document.createElement('script');
  script.type = 'module';
  script.src = WAKES;
  const links = NEEDED.map((file) => {
    const link = document.createElement('link');
    link.rel = 'modulepreload';
    link.href = file;
    return link;
  });
  document.head.append(script, ...links);
}

function openEarly(file: string): void {
  // What leads to another view than the first screen is not answered.
  const question = { now: Date.now(), language: navigator.language };
  const name = location.hash === '' ? nameOfQuestion({ ...question, kept: keptNight() }) : '';
  const worker = new Worker(file, { name });
  const start: EarlyStart = { worker, answer: null };
  globalThis.heavyAirStart = start;
  worker.addEventListener('error', (event) => {
    event.preventDefault();
    start.worker = null;
    wakeUp();
  });
  worker.addEventListener('message', ({ data }) => {
    wakeUp();
    if (!('drawn' in data)) return;
    const put = () => {
      start.answer = nodeOf(data.drawn);
      const awake = document.documentElement.hasAttribute(AWAKE);
      if (!awake) document.querySelector('main')?.replaceWith(start.answer);
      dispatchEvent(new Event(EARLY_ANSWER));
    };
    // A face that cannot be had keeps nothing back.
    faceHere().then(put, put);
  });
}

try {
  openEarly(process.env.PLANNER_FILE ?? '');
} catch {
  // The page goes on without.
  wakeUp();
}

// On a slow line what answers first comes first. Where the files are kept in the browser there is nothing to wait for.
if (navigator.serviceWorker?.controller) wakeUp();
else setTimeout(wakeUp, PATIENCE_MS);
