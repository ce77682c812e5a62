import type { ClubRacer } from '@/lib/club/racer';
import { makePlan } from '@/lib/plan/make-plan';
import { addMinutes } from '@/lib/time/instant';
import { kelvinDifference } from '@/lib/units/quantity';
import { clubNight, racerOf } from '@/tests/club/club-cases';
import { makeBriefing } from '@/tests/support/make-briefing';
import { DUSK, runsOf } from '@/tests/support/plan-cases';
import { airOf, raceMachine } from '@/tests/support/race-machine';
import { median, ms, tell, times } from './outcome';

/** The longest that planning a whole club may take. */
const WANTED_MS = 40;
const RACERS = 100;
const RUNS = 12;
const ROUNDS = 25;

/** The clock counts what other programs take of a busy machine, the processor what the collector does beside the work. */
function timed(work: () => unknown): { readonly cpu: number; readonly wall: number } {
  const cpu = process.cpuUsage();
  const start = performance.now();
  work();
  const wall = performance.now() - start;
  const { user, system } = process.cpuUsage(cpu);
  return { cpu: (user + system) / 1000, wall };
}

/** One to three carburettors, four baselines proven in nine airs, two intakes; as many classes as asked for. */
function racer(i: number, classes: number): ClubRacer {
  const main = 400 + 10 * (i % 4);
  return racerOf({
    id: `racer-${i}`,
    runs: runsOf({ first: 18 + (i % classes) / 2, every: 40, count: RUNS }),
    machine: raceMachine({
      carburettors: Array.from({ length: 1 + (i % 3) }, () => ({ main })),
      box: [390, 400, 410, 420, 430, 440, 450, 460].map((size) => ({ size, count: 3 })),
      baselineAir: airOf(-5 - (i % 9), 985, 0.8),
      intakeOffset: kelvinDifference(i % 2 === 0 ? 0 : 3),
    }),
  });
}

/** A new `now` each time, as the page has it: nothing is remembered from the last briefing. */
const nights = Array.from({ length: ROUNDS + 5 }, (_, i) => clubNight({ now: addMinutes(DUSK, i / 2) }));

function report(classes: number): void {
  const racers = Array.from({ length: RACERS }, (_, i) => racer(i, classes));
  for (const night of nights.slice(ROUNDS)) makeBriefing(racers, night);
  const briefings = nights.slice(0, ROUNDS).map((night) => timed(() => makeBriefing(racers, night)));
  const alone = nights.slice(0, 5).map((night) =>
    timed(() => {
      for (const { machine, runs, fitted, made, accepted } of racers)
        makePlan({ ...night, machine, runs, fitted, made, accepted });
    }),
  );
  const cpu = median(briefings.map((each) => each.cpu));
  const clock = median(briefings.map((each) => each.wall));
  const peer = median(alone.map((each) => each.cpu));
  tell({
    what: `briefing of ${RACERS} racers x ${RUNS} runs, ${classes} ${classes === 1 ? 'class' : 'classes'}`,
    ours: `${ms(clock)}, ${ms(cpu)} of processor`,
    peer: `makePlan for each, no weather shared, ${ms(peer)} of processor`,
    ratio: `${times(peer / cpu)} as fast`,
    // Classes apart in time share less weather; the goal is a field that runs together.
    wanted:
      classes === 1 ? { goal: `${WANTED_MS} ms or less`, met: Math.min(cpu, clock) <= WANTED_MS } : null,
  });
}

report(1);
report(4);
