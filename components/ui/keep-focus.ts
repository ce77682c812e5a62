/** The element with the focus and all it stands in, innermost first. */
type Line = readonly Element[];

/**
 * Gives the focus a place when what had it is taken away, as a button is by the act it stands for: the heading of the
 * part of the page around it. A button that is only out of use for a moment gets the focus back. Answers with the end
 * of it.
 */
export function keepFocus(page: Document): () => void {
  let [line, before]: readonly [Line, Line] = [[], []];
  function remember({ target }: FocusEvent) {
    if (target instanceof Element) [line, before] = [lineOf(target), line];
  }
  /** A tap beside everything lets the focus go, and means it. */
  function forget() {
    line = [];
  }
  function look(changes: readonly MutationRecord[]) {
    const [last] = line;
    if (last === undefined || page.activeElement !== page.body) return;
    const back = last.isConnected ? backInUse(last, changes) : (placeOf(line) ?? placeOf(before));
    back?.focus({ preventScroll: true });
    keepInSight(back ?? null);
  }
  const observer = new MutationObserver(look);
  observer.observe(page.body, { childList: true, subtree: true, attributeFilter: ['disabled'] });
  page.addEventListener('focusin', remember);
  page.addEventListener('pointerdown', forget, true);
  return () => {
    observer.disconnect();
    page.removeEventListener('focusin', remember);
    page.removeEventListener('pointerdown', forget, true);
  };
}

/** Whoever goes by keys must see where the focus is; for a finger the page does not move. */
export function keepInSight(place: Element | null): void {
  if (place?.matches(':focus-visible')) place.scrollIntoView({ block: 'nearest' });
}

function lineOf(element: Element): Line {
  const line: Element[] = [];
  for (let at: Element | null = element; at !== null; at = at.parentElement) line.push(at);
  return line;
}

function backInUse(element: Element, changes: readonly MutationRecord[]): HTMLElement | null {
  const touched = changes.some(({ target }) => target === element);
  return touched && element instanceof HTMLElement && !element.matches(':disabled') ? element : null;
}

/**
 * The element itself if it is still there, else the heading of the part of the page it stood in; where the whole page
 * was put up anew, of the page.
 */
function placeOf([element, ...around]: Line): HTMLElement | null {
  if (element?.isConnected === true) return element instanceof HTMLElement ? element : null;
  const left = around.find(({ isConnected }) => isConnected);
  const part =
    left?.closest<HTMLElement>('section, form, dialog, main') ?? left?.querySelector<HTMLElement>('main');
  if (part === undefined || part === null) return null;
  const place = part.querySelector<HTMLElement>('h1, h2, h3, legend') ?? part;
  place.tabIndex = -1;
  return place;
}
