import { costOf, type RunChoice } from '@/lib/plan/choice';
import { decide } from '@/lib/plan/decide';
import { prepareNight } from '@/lib/plan/night';
import { optimise } from '@/lib/plan/optimise';
import { viewOf } from '@/lib/plan/view';
import { highsSolver } from '@/tests/support/highs-solver';
import { mixedIntegerOptimum } from '@/tests/support/mixed-integer';
import { requestOf } from '@/tests/support/plan-cases';
import { bruteForce, dice, inventedChoice } from '@/tests/support/small-choices';
import { ms, tell, times } from './outcome';

/** The choice of a night against HiGHS, the mixed-integer solver, and against looking at every plan. */
/** Processor time of one piece of work [ms]: a machine that is busy with other things slows neither side more. */
function cost(rounds: number, work: () => void): number {
  const before = process.cpuUsage();
  for (let round = 0; round < rounds; round++) work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000 / rounds;
}

/** In units that a solver working in floating point can hold: a millionth of the loss, a thousandth of the risk. */
function coarse(choice: RunChoice): RunChoice {
  const by = (values: Float64Array, unit: number) => values.map((value) => Math.round(value / unit));
  return {
    ...choice,
    lean: by(choice.lean, 1e6),
    loss: by(choice.loss, 1e6),
    swapCost: Math.round(choice.swapCost / 1e6),
    turnCost: Math.round(choice.turnCost / 1e6),
  };
}

const request = requestOf();
const night = coarse(decide(request, viewOf(request.machine, prepareNight(request))).choice);
const solve = await highsSolver();
for (let i = 0; i < 2000; i++) optimise(night);
const ours = cost(3000, () => optimise(night));
const theirs = cost(7, () => mixedIntegerOptimum(night, solve));
const proven = costOf(night, mixedIntegerOptimum(night, solve).plan);
const found = optimise(night).cost;
const agree = proven !== null && proven.harm === found.harm && proven.cost === found.cost;

const small = inventedChoice(dice(7), { runs: 6, groups: 6, trims: 1, levels: 100 });
for (let i = 0; i < 500; i++) optimise(small);
const ourSmall = cost(3000, () => optimise(small));
const every = cost(7, () => bruteForce(small));

tell({
  what: 'best plan, 12 runs x 12 jets',
  ours: ms(ours),
  peer: `HiGHS ${ms(theirs)}, ${agree ? 'the same optimum' : 'ANOTHER OPTIMUM'}`,
  ratio: `${times(theirs / ours)} as fast`,
  wanted: { goal: '500 x or more, the same optimum', met: theirs / ours >= 500 && agree },
});
tell({
  what: 'best plan, 6 runs x 6 jets',
  ours: ms(ourSmall),
  peer: `all 46,656 plans ${ms(every)}`,
  ratio: `${times(every / ourSmall)} as fast`,
  wanted: null,
});
