import { makePlan, planMany } from '@/lib/plan/make-plan';
import type { PlanRequest } from '@/lib/plan/types';
import { DUSK, machineOf, requestOf, runsOf, seriesOf } from '@/tests/support/plan-cases';
import { ms, tell, times } from './outcome';

/** How long a plan takes: one racer's night, and a field of a hundred over two days, against planning each alone. */
const ROUNDS = 300;
const RACERS = 100;

/** What is wanted of one plan, and of a field's. */
const WANTED_P95_MS = 2;
const WANTED_TOGETHER_MS = 40;

type Taken = { readonly least: number; readonly median: number; readonly p95: number; readonly cpu: number };

/** On the clock, and what the processor spent: on a machine that is busy with other things the two differ. */
function take(rounds: number, work: () => void): Taken {
  const before = process.cpuUsage();
  const taken = Array.from({ length: rounds }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  }).sort((a, b) => a - b);
  const { user, system } = process.cpuUsage(before);
  return {
    least: taken[0]!,
    median: taken[Math.floor(rounds / 2)]!,
    p95: taken[Math.floor(rounds * 0.95)]!,
    cpu: (user + system) / 1000 / rounds,
  };
}

const one = requestOf({ runs: runsOf({ first: 18, every: 40, count: 12 }) });
// A fresh pair of lists each time: nothing may be kept from the plan before.
const fresh = (): PlanRequest => ({ ...one, runs: [...one.runs], series: { ...one.series } });

const days = seriesOf(Array.from({ length: 49 }, (_, i) => -9 - 8 * Math.sin((i / 24) * 2 * Math.PI)));
const field = Array.from(
  { length: RACERS },
  (_, i): PlanRequest => ({
    ...one,
    series: days,
    now: DUSK,
    machine: machineOf({ name: `Racer ${i + 1}`, carburettors: [{ main: 390 + 10 * (i % 6) }] }),
  }),
);

take(100, () => makePlan(fresh()));
const single = take(ROUNDS, () => makePlan(fresh()));
take(3, () => planMany(field));
const together = take(15, () => planMany(field));
const alone = take(5, () => field.map((request) => makePlan(request)));

tell({
  what: 'one plan, 12 runs x 12 jets x 64 scenarios',
  ours: `${ms(single.median)}, least ${ms(single.least)}, p95 ${ms(single.p95)}`,
  peer: 'none',
  ratio: `${ms(single.cpu)} of processor`,
  wanted: { goal: `p95 ${WANTED_P95_MS} ms or less`, met: single.p95 <= WANTED_P95_MS },
});
tell({
  what: `plans of ${RACERS} racers over 48 h, together`,
  ours: `${ms(together.median)}, least ${ms(together.least)}, p95 ${ms(together.p95)}`,
  peer: `each alone ${ms(alone.median)}`,
  ratio: `${times(alone.cpu / together.cpu)} as fast`,
  wanted: { goal: `${WANTED_TOGETHER_MS} ms or less`, met: together.median <= WANTED_TOGETHER_MS },
});
