import { nextDue } from '@/lib/posted/job-rows';
import type { PostedDb } from '@/lib/posted/tables';
import { type Instant, instant } from '@/lib/time/instant';

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

/**
 * A timer that is set for longer looks at the clock again after this. A clock may be put right meanwhile, a laptop may
 * sleep (a timer does not count that); and Node keeps something for each length of a timer that was given up, until its
 * time would have come: with waits of hours, set anew after each act, a server would hold more and more.
 */
const LONGEST_MS = 60_000;
/** After a fault, such as a database that does not answer. */
const AFTER_FAULT_MS = 30_000;

/** Runs what is due when it is due. With nothing posted there is no timer. */
export function createTicker({ dbIfAny, now, runDue, tell, lookInMs }: Given): Ticker {
  let timer: NodeJS.Timeout | null = null;
  let running = false;
  let again = false;

  /** When something is due next; null: nothing is. */
  async function run(): Promise<Instant | null> {
    const db = await dbIfAny();
    if (db === null) return null;
    await runDue(db);
    const due = await nextDue(db);
    if (lookInMs === null) return due;
    return instant(Math.min(due ?? Number.POSITIVE_INFINITY, now() + lookInMs));
  }

  function stop(): void {
    if (timer !== null) clearTimeout(timer);
    timer = null;
  }

  function at(due: Instant): void {
    stop();
    const wait = Math.max(0, due - now());
    timer = wait > LONGEST_MS ? setTimeout(() => at(due), LONGEST_MS) : setTimeout(wake, wait);
    timer.unref();
  }

  function wake(): void {
    again = running;
    if (running) return;
    running = true;
    stop();
    run()
      .catch((error: unknown) => {
        tell(error);
        return instant(now() + AFTER_FAULT_MS);
      })
      .then((due) => {
        running = false;
        if (again) wake();
        else if (due !== null) at(due);
      });
  }

  return { wake, waits: () => timer !== null };
}
