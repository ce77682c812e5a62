import type { Threads } from '@/app/api/_planning/threads';
import type { StraightRoute } from './straight';

/** What whoever serves this process tells those who answer in it, and hears from them. */
export type ServedProcess = {
  /** It takes nothing new and will be gone in seconds. */
  ending: boolean;
  /** What is answered without the framework; nothing until it has loaded the routes. */
  straight: readonly StraightRoute[];
  readonly planning: Threads;
  readonly upstreamFailed: (host: string, code: string) => void;
};

/** Who asks, by the address that was seen; put there by the server, which throws away what a caller wrote. */
export const CALLER_HEADER = 'x-heavy-air-caller';

/** On globalThis, since the framework bundles each route with a copy of this module of its own. */
const shared = globalThis as typeof globalThis & { heavyAirServed?: ServedProcess };

/** null in a development server and in tests, which no server of ours stands in front of. */
export function servedProcess(): ServedProcess | null {
  return shared.heavyAirServed ?? null;
}

export function announceServedProcess(served: ServedProcess): void {
  shared.heavyAirServed = served;
}
