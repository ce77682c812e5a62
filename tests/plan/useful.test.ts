import { describe, expect, it } from 'vitest';
import { candidatesFor, indexOfSetting } from '@/lib/plan/candidates';
import { costOf } from '@/lib/plan/choice';
import { decide } from '@/lib/plan/decide';
import { choiceOf } from '@/lib/plan/matrix';
import { prepareNight } from '@/lib/plan/night';
import { optimise } from '@/lib/plan/optimise';
import { viewOf } from '@/lib/plan/view';
import { ratio } from '@/lib/units/quantity';
import { machineOf, requestOf } from '@/tests/support/plan-cases';
import { simulatedNight } from '@/tests/support/simulated-nights';

type Request = ReturnType<typeof requestOf>;

/** The plan of the night's own candidates beside the best one from every candidate there is. */
function besideAll(request: Request) {
  const { machine } = request;
  const view = viewOf(machine, prepareNight(request));
  const { situation, candidates, fresh } = decide(request, view);
  const all = candidatesFor(machine, situation.fitted);
  const choice = choiceOf({
    machine,
    judge: view.judge,
    candidates: all,
    odds: situation.open.map((run) => view.odds[run]!),
    runs: situation.open.map((run) => view.night.sortedRuns[run]!),
    situation,
    start: indexOfSetting(all, situation.fitted),
    options: request.options,
  });
  return { candidates, fresh, all, choice, best: optimise(choice).cost };
}

const TRIM = { lowest: -1, highest: 2, baseline: 0, richerPerPosition: ratio(0.015) };

describe('The candidates a night needs', () => {
  it('hold a plan as good as the best from the whole box, with trim and without', () => {
    let left = 0;
    for (let seed = 1; seed <= 60; seed++) {
      const { request } = simulatedNight(80_000 + seed);
      const machine = { ...request.machine, trim: seed % 2 === 0 ? TRIM : null };
      const { candidates, fresh, all, choice, best } = besideAll({ ...request, machine });
      expect([fresh.cost.harm, fresh.cost.cost], `seed ${seed}`).toEqual([best.harm, best.cost]);
      const same = fresh.plan.map((candidate) => indexOfSetting(all, candidates[candidate]!.setting));
      expect(costOf(choice, same)?.cost, `seed ${seed}`).toBe(best.cost);
      left += candidates.length / all.length;
    }
    expect(left / 60).toBeLessThan(0.6);
  });

  it('hold it too where what is in could not come from the box, lean or rich, staggered or not', () => {
    const machine = machineOf({
      carburettors: [410, 400, 410].map((main) => ({ main })),
      box: [400, 410, 420, 430].map((size) => ({ size, count: 3 })),
    });
    for (const mains of [
      [400, 400, 400],
      [380, 380, 380],
      [410, 410, 400],
      [405, 395, 405],
      [440, 410, 410],
      [480, 480, 480],
    ]) {
      const request = requestOf({ machine, fitted: { mains, trim: null } });
      const { fresh, best } = besideAll(request);
      expect([fresh.cost.harm, fresh.cost.cost], mains.join('/')).toEqual([best.harm, best.cost]);
    }
  });

  it('are few for a box of a hundred sizes and six staggered carburettors', () => {
    const machine = machineOf({
      carburettors: [150, 152.5, 155, 157.5, 152.5, 160].map((main) => ({ main })),
      marking: { kind: 'bore' },
      box: Array.from({ length: 100 }, (_, i) => ({ size: 80 + 1.5 * i, count: 9 })),
    });
    const view = viewOf(machine, prepareNight(requestOf()));
    const { candidates } = decide(requestOf({ machine }), view);
    expect(candidatesFor(machine, candidates[0]!.setting).length).toBeGreaterThan(150);
    expect(candidates.length).toBeLessThan(60);
  });
});
