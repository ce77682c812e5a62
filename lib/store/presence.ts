/** A page as it is left, and found again where the browser keeps whole pages for Back. */
export type Presence = {
  /** Settles at once while the page is shown, else when it is back. */
  readonly here: () => Promise<void>;
  /** How often the page was left so far. */
  readonly departures: () => number;
  /** Calls while the page is being left: only what is done before it returns is sure to happen. Returns the way out. */
  readonly onLeave: (act: () => void) => () => void;
  readonly onReturn: (act: () => void) => () => void;
  /** Stops looking. */
  readonly close: () => void;
};

function openCalls() {
  const acts = new Set<() => void>();
  return {
    all: (): void => {
      for (const act of [...acts]) act();
    },
    on: (act: () => void): (() => void) => {
      acts.add(act);
      return () => void acts.delete(act);
    },
  };
}

/** Hears `pagehide` and `pageshow` of a window (HTML standard, session history); a target without them is never left. */
export function watchPage(page: EventTarget): Presence {
  const leaving = openCalls();
  const returning = openCalls();
  let count = 0;
  let away: { readonly back: Promise<void>; readonly end: () => void } | null = null;
  const leave = (): void => {
    if (away !== null) return;
    count += 1;
    let end = (): void => undefined;
    const back = new Promise<void>((resolve) => {
      end = resolve;
    });
    away = { back, end };
    leaving.all();
  };
  const comeBack = (): void => {
    // A page that is shown for the first time was never left.
    if (away === null) return;
    away.end();
    away = null;
    returning.all();
  };
  page.addEventListener('pagehide', leave);
  page.addEventListener('pageshow', comeBack);
  return {
    here: () => away?.back ?? Promise.resolve(),
    departures: () => count,
    onLeave: leaving.on,
    onReturn: returning.on,
    close: () => {
      page.removeEventListener('pagehide', leave);
      page.removeEventListener('pageshow', comeBack);
    },
  };
}

/** The window around this script; where there is none, a page that is never left. */
export function ownPage(): EventTarget {
  return typeof window === 'undefined' ? new EventTarget() : window;
}
