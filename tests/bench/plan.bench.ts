import { makePlan, planMany } from '@/lib/plan/make-plan';
import type { PlanRequest } from '@/lib/plan/types';
import { DUSK, machineOf, requestOf, runsOf, seriesOf } from '@/tests/support/plan-cases';

/** How long a plan takes: one racer's night, and a field of a hundred over two days, against planning each alone. */
const ROUNDS = 300;
const RACERS = 100;

type Times = { readonly median: number; readonly p95: number; readonly cpu: number };

/** On the clock, and what the processor spent: on a machine that is busy with other things the two differ. */
function times(rounds: number, work: () => void): Times {
  const before = process.cpuUsage();
  const taken = Array.from({ length: rounds }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  }).sort((a, b) => a - b);
  const { user, system } = process.cpuUsage(before);
  return {
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

times(100, () => makePlan(fresh()));
const single = times(ROUNDS, () => makePlan(fresh()));
times(3, () => planMany(field));
const together = times(15, () => planMany(field));
const alone = times(5, () => field.map((request) => makePlan(request)));

const ms = (value: number) => `${value.toFixed(value < 10 ? 2 : 0)} ms`;
console.log('plan         one racer, 12 runs, 12 jets, 64 scenarios');
console.log(
  `             median ${ms(single.median)}, p95 ${ms(single.p95)}, processor ${ms(single.cpu)}   (wanted: p95 4 ms or less)`,
);
console.log(
  `field        ${RACERS} racers, 48 h: ${ms(together.median)}, processor ${ms(together.cpu)}   (wanted: 100 ms or less)`,
);
console.log(
  `             each alone: processor ${ms(alone.cpu)}, ratio ${(alone.cpu / together.cpu).toFixed(1)} x`,
);
