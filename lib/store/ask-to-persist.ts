/** Asks the browser not to clear the data by itself; null where it cannot be asked. */
export async function askToPersist(): Promise<boolean | null> {
  if (typeof navigator === 'undefined' || navigator.storage?.persist === undefined) return null;
  return navigator.storage.persist();
}

/** Whether the browser has promised it already; null where it does not say. */
export async function isPersisted(): Promise<boolean | null> {
  if (typeof navigator === 'undefined' || navigator.storage?.persisted === undefined) return null;
  return navigator.storage.persisted();
}
