import { newId } from './new-id';

const KEY = 'heavy-air.device';
const LENGTH = 12;
let ofThisPage: string | null = null;

/**
 * The name of this browser in the traces of its records: drawn by lot, tells nothing. Where the browser keeps nothing,
 * each page is a device of its own, which costs a little room and loses nothing.
 */
export function ownDevice(): string {
  ofThisPage ??= keptDevice();
  return ofThisPage;
}

/** Takes another name from the next write on, where another browser writes under this one too. */
export function renameDevice(): void {
  try {
    localStorage.removeItem(KEY);
  } catch {
    // Private mode: the name was of this page alone.
  }
  ofThisPage = null;
}

function keptDevice(): string {
  const fresh = newId().slice(0, LENGTH);
  try {
    const kept = localStorage.getItem(KEY);
    if (kept !== null && /^[0-9a-f]{12}$/.test(kept)) return kept;
    localStorage.setItem(KEY, fresh);
  } catch {
    // Private mode, or storage that is full or shut.
  }
  return fresh;
}
