/**
 * What a piece of work gives, or what stands for its being late: whichever comes first. Work that never settles and
 * hears no signal (a body whose reader hangs) is left behind, and what becomes of it later is nobody's concern.
 */
export function inTime<T>(
  work: Promise<T>,
  { ms, signal, late }: { readonly ms: number; readonly signal?: AbortSignal; readonly late: () => T },
): Promise<T> {
  return new Promise((resolve, reject) => {
    const tooLate = (): void => {
      settled();
      resolve(late());
    };
    const timer = setTimeout(tooLate, ms);
    const settled = (): void => {
      clearTimeout(timer);
      signal?.removeEventListener('abort', tooLate);
    };
    signal?.addEventListener('abort', tooLate);
    work.finally(settled).then(resolve, reject);
    if (signal?.aborted === true) tooLate();
  });
}
