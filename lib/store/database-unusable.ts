import type { MemoryReason } from './store-type';

/** The database cannot be used, and why. */
export class DatabaseUnusable extends Error {
  readonly because: MemoryReason;
  constructor(because: MemoryReason, cause?: unknown) {
    super(`database unusable: ${because}`, { cause });
    this.because = because;
  }
}

/** DOM exceptions of other frames fail instanceof, so names are compared. */
export const errorName = (error: unknown): unknown =>
  typeof error === 'object' && error !== null && 'name' in error ? error.name : null;

/** What a failed request means. */
export function reasonOf(error: unknown): MemoryReason {
  if (error instanceof DatabaseUnusable) return error.because;
  const name = errorName(error);
  if (name === 'QuotaExceededError') return 'full';
  if (name === 'VersionError') return 'newer-app';
  return name === 'SecurityError' ? 'no-database' : 'failed';
}
