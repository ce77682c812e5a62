/**
 * Half-typed forms, kept from key to key so that a reload or a dead battery costs nothing. They are not records: a form
 * may hold text that is not a number yet. Where the browser allows no storage, they live as long as the page.
 */
const PREFIX = 'heavy-air.draft.';
/** What the browser would not store. */
const inPage = new Map<string, unknown>();

/** Keeps a draft; false where the browser would not (private mode, storage full or shut). */
export function keepDraft(key: string, draft: unknown): boolean {
  try {
    localStorage.setItem(PREFIX + key, JSON.stringify(draft));
    inPage.delete(key);
    return true;
  } catch {
    inPage.set(key, draft);
    return false;
  }
}

/** The draft as it was kept, of any shape; null where there is none or it cannot be read. */
export function keptDraft(key: string): unknown {
  if (inPage.has(key)) return inPage.get(key);
  try {
    const text = localStorage.getItem(PREFIX + key);
    return text === null ? null : (JSON.parse(text) as unknown);
  } catch {
    return null;
  }
}

export function dropDraft(key: string): void {
  inPage.delete(key);
  try {
    localStorage.removeItem(PREFIX + key);
  } catch {
    // Nothing was kept, so there is nothing to drop.
  }
}
