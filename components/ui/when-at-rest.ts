/** How long a page that never rests keeps the work waiting [ms]. */
const LATEST_MS = 5000;

/**
 * Work that can wait: done once the page has nothing else to do. What is returned takes it back.
 */
export function whenAtRest(work: () => void): () => void {
  if ('requestIdleCallback' in window) {
    const request = window.requestIdleCallback(work, { timeout: LATEST_MS });
    return () => window.cancelIdleCallback(request);
  }
  const timer = setTimeout(work, LATEST_MS / 5);
  return () => clearTimeout(timer);
}
