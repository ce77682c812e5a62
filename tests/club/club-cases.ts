import type { ClubNight, ClubRacer } from '@/lib/club/racer';
import { DEFAULT_OPTIONS } from '@/lib/plan/options';
import { COLD_NIGHT, DUSK, machineOf, runsOf } from '@/tests/support/plan-cases';

/** One racer of an invented club: six runs from 18:00, an hour apart. */
export function racerOf(given: Partial<ClubRacer> & Pick<ClubRacer, 'id'>): ClubRacer {
  return {
    name: given.id,
    boxId: given.id,
    machine: machineOf(),
    runs: runsOf({ first: 18, every: 60, count: 6 }),
    fitted: null,
    made: [],
    accepted: null,
    ...given,
  };
}

export function clubNight(given: Partial<ClubNight> = {}): ClubNight {
  return { series: COLD_NIGHT, readings: [], now: DUSK, options: DEFAULT_OPTIONS, ...given };
}

/** So many of each size. */
export function boxOf(sizes: readonly number[], count = 1) {
  return sizes.map((size) => ({ size, count }));
}
