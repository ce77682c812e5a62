// Stands in for the framework's `next/navigation` in the scripts of the pages (.scripts/page-scripts.mjs), as far as they use
// it: links are plain and load a page, so what changes under a page is what it pushes and what Back pops.
import { useSyncExternalStore } from 'react';
import { OnlyAwake } from './only-awake';

let drawnAt = '/';

/** Where the page lies that the build draws next. */
export function drawAt(path: string): void {
  drawnAt = path;
}

const MOVED = 'heavy-air-moved';

/** A browser says when an entry is popped and keeps silent when one is pushed. */
function sayWhenMoved(): void {
  for (const name of ['pushState', 'replaceState'] as const) {
    const move = history[name].bind(history);
    history[name] = (...given) => {
      move(...given);
      dispatchEvent(new Event(MOVED));
    };
  }
}

if (typeof window !== 'undefined') sayWhenMoved();

function subscribe(listener: () => void): () => void {
  addEventListener(MOVED, listener);
  addEventListener('popstate', listener);
  return () => {
    removeEventListener(MOVED, listener);
    removeEventListener('popstate', listener);
  };
}

/** Where the page lies. */
export function usePathname(): string {
  return useSyncExternalStore(
    subscribe,
    () => location.pathname,
    () => (typeof window === 'undefined' ? drawnAt : location.pathname),
  );
}

/** What stands behind the `?` of the address; only a browser knows. */
export function useSearchParams(): URLSearchParams {
  const search = useSyncExternalStore(
    subscribe,
    () => location.search,
    () => {
      throw new OnlyAwake();
    },
  );
  return new URLSearchParams(search);
}
