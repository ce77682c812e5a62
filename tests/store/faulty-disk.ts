import type { Backing } from '@/lib/store/backing';
import { openDatabase } from '@/lib/store/database';

/** A disk that can be made to fail. `fault` null: works. */
export type FaultyDisk = {
  fault: string | null;
  /** Which requests fail. */
  on: 'writes' | 'everything' | 'opening';
  readonly open: (onSuperseded: () => void) => Promise<Backing>;
};

/** The real database, with faults of the kind browsers have: a DOM exception with a name. */
export function faultyDisk(fault: string | null = null, on: FaultyDisk['on'] = 'writes'): FaultyDisk {
  const disk: FaultyDisk = {
    fault,
    on,
    open: async (onSuperseded) => {
      if (disk.fault !== null && disk.on !== 'writes') throw new DOMException('faulty', disk.fault);
      const real = await openDatabase({ onSuperseded });
      const check = (write: boolean): void => {
        if (disk.fault !== null && (write || disk.on === 'everything'))
          throw new DOMException('faulty', disk.fault);
      };
      return {
        ...real,
        read: async (scope) => {
          check(false);
          return real.read(scope);
        },
        transact: (scope, decide) =>
          real.transact(scope, (rows) => {
            const decision = decide(rows);
            check(decision.changes.rows.length > 0);
            return decision;
          }),
      };
    },
  };
  return disk;
}
