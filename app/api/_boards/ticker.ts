import { nextDue } from '@/lib/posted/job-rows';
import type { PostedDb } from '@/lib/posted/tables';
import type { Instant } from '@/lib/time/instant';

export type Ticker = {
  /** Something may be due, now or later. */
  readonly wake: () => void;
  /** True where a timer runs. */
  readonly waits: () => boolean;
};

type Given = {
  readonly dbIfAny: () => Promise<PostedDb | null>;
  readonly now: () => Instant;
  readonly runDue: (db: PostedDb) => Promise<void>;
  readonly tell: (error: unknown) => void;
  /** Servers that share a database look in this often for the jobs of one that died; null: there are no others. */
  readonly lookInMs: number | null;
};

/** A timer keeps no more than this (2^31 - 1 ms); a job that is later is looked for again then. */
const LONGEST_MS = 2_147_483_647;
/** After a fault, such as a database that does not answer. */
const AFTER_FAULT_MS = 30_000;

/** Runs what is due when it is due. With nothing posted there is no timer. */
export function createTicker({ dbIfAny, now, runDue, tell, lookInMs }: Given): Ticker {
  let timer: NodeJS.Timeout | null = null;
  let running = false;
  let again = false;

  async function run(): Promise<number | null> {
    const db = await dbIfAny();
    if (db === null) return null;
    await runDue(db);
    const due = await nextDue(db);
    const wait = due === null ? null : Math.max(0, due - now());
    return lookInMs === null ? wait : Math.min(wait ?? lookInMs, lookInMs);
  }

  function later(ms: number | null): void {
    if (timer !== null) clearTimeout(timer);
    timer = ms === null ? null : setTimeout(wake, Math.min(ms, LONGEST_MS));
    timer?.unref();
  }

  function wake(): void {
    again = running;
    if (running) return;
    running = true;
    later(null);
    run()
      .catch((error: unknown) => {
        tell(error);
        return AFTER_FAULT_MS;
      })
      .then((ms) => {
        running = false;
        if (again) wake();
        else later(ms);
      });
  }

  return { wake, waits: () => timer !== null };
}
