import { describe, expect, it } from 'vitest';
import { candidatesFor } from '@/lib/plan/candidates';
import { inUnits, LEAN_UNIT, LOSS_UNIT } from '@/lib/plan/choice';
import { isDrowned, isLeanWithin, isTooRich, leanOver, lossOf } from '@/lib/plan/grade';
import { choiceOf } from '@/lib/plan/matrix';
import { prepareNight } from '@/lib/plan/night';
import { noiseIn, withRoom } from '@/lib/plan/room';
import { situationOf } from '@/lib/plan/situation';
import { viewOf } from '@/lib/plan/view';
import { ratio } from '@/lib/units/quantity';
import { simulatedNight } from '@/tests/support/simulated-nights';

/** Every setting of a staggered machine with a trim, in every run of a simulated night. */
function gradedNight(seed: number) {
  const { request } = simulatedNight(seed);
  const machine = {
    ...request.machine,
    carburettors: [{ main: 400 }, { main: 410 }, { main: 425 }].slice(0, 1 + (seed % 3)),
    trim: seed % 2 === 0 ? { lowest: -1, highest: 2, baseline: 0, richerPerPosition: ratio(0.015) } : null,
  };
  const night = prepareNight(request);
  const view = viewOf(machine, night);
  const situation = situationOf({ ...request, machine }, night);
  const candidates = candidatesFor(machine, situation.fitted);
  const odds = situation.open.map((run) => view.odds[run]!);
  const runs = situation.open.map((run) => ({ ...night.sortedRuns[run]!, weight: 1 + (run % 3) }));
  const { judge } = view;
  const { options } = request;
  const choice = choiceOf({ machine, judge, candidates, odds, runs, situation, start: 0, options });
  return { view, situation, candidates, odds, runs, judge, choice };
}

describe('The grades of a night', () => {
  it('are those of every setting in every run, each worked out alone', () => {
    let [lean, rich] = [0, 0];
    for (let seed = 301; seed <= 312; seed++) {
      const { candidates, odds, runs, judge, choice } = gradedNight(seed);
      for (const [run, each] of odds.entries())
        for (const [c, candidate] of candidates.entries()) {
          const at = run * candidates.length + c;
          const loss = lossOf(each, candidate, judge) * runs[run]!.weight;
          expect([choice.lean[at], choice.rich[at], choice.loss[at]], `seed ${seed}, ${run}, ${c}`).toEqual([
            isDrowned(loss / runs[run]!.weight)
              ? inUnits(3, LEAN_UNIT)
              : inUnits(leanOver(each, candidate, judge), LEAN_UNIT),
            isTooRich(each, candidate, judge) ? 1 : 0,
            inUnits(loss, LOSS_UNIT),
          ]);
          lean += Number(choice.lean[at]! > 0);
          rich += choice.rich[at]!;
        }
    }
    expect(Math.min(lean, rich)).toBeGreaterThan(500);
  });

  it('count a setting as close to its limit where a colder night would be lean, and never the accepted one', () => {
    let close = 0;
    for (let seed = 301; seed <= 332; seed++) {
      const { view, situation, candidates, odds, judge, choice } = gradedNight(seed);
      const rooms = situation.open.map((run) => noiseIn(view, run));
      const accepted = odds.map((_, run) => run % candidates.length);
      const { lean } = withRoom(choice, { judge, candidates, odds, rooms, accepted });
      for (const [run, each] of odds.entries())
        for (const [c, candidate] of candidates.entries()) {
          const at = run * candidates.length + c;
          const isClose =
            choice.lean[at] === 0 && c !== accepted[run] && isLeanWithin(each, candidate, judge, rooms[run]!);
          expect(lean[at], `seed ${seed}, ${run}, ${c}`).toBe(isClose ? 1 : choice.lean[at]);
          close += Number(isClose);
        }
    }
    expect(close).toBeGreaterThan(20);
  });
});
