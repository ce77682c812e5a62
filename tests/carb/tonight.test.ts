import { describe, expect, it } from 'vitest';
import { drifts } from '@/lib/carb/drift';
import type { Machine } from '@/lib/carb/machine';
import { tonightOf } from '@/lib/carb/tonight';
import type { Verdict } from '@/lib/carb/verdicts';
import { makePlan } from '@/lib/plan/make-plan';
import { expectOk } from '@/lib/result/result';
import { tonightSentence } from '@/lib/words/tonight';
import { machineOf, requestOf, seriesOf } from '@/tests/support/plan-cases';

const machine = machineOf();
const AIR = machine.baselineAir;
const on = (...mains: readonly number[]) => ({ mains, trim: null });
const said = (
  main: number,
  verdict: Verdict | null,
  sizes: number | null = null,
): Parameters<typeof tonightOf>[1][number] => ({
  run: 'Round 3',
  air: AIR,
  setting: on(main),
  verdicts: [verdict],
  sizes,
});
const asked = (...verdicts: readonly ReturnType<typeof said>[]) =>
  tonightOf(machine, verdicts)?.logAreas[0] ?? 0;
/** One step of ten on a 410, as the box has it. */
const STEP = Math.log(420 / 410);

describe('A verdict of tonight', () => {
  it('of lean on the baseline asks for one size more, or for as many as were said', () => {
    expect(asked(said(410, 'lean'))).toBeCloseTo(STEP, 3);
    expect(asked(said(410, 'lean', 2))).toBeCloseTo(2 * STEP, 3);
  });

  it('of lean on a richer jet asks for one size more than that jet', () => {
    expect(asked(said(420, 'lean'))).toBeCloseTo(Math.log(430 / 410), 2);
  });

  it('holds until a run says otherwise: right on the richer jet keeps it, right on the old one ends it', () => {
    expect(asked(said(410, 'lean'), said(420, 'right'))).toBeCloseTo(STEP, 3);
    expect(asked(said(410, 'lean'), said(410, 'right'))).toBe(0);
    expect(asked(said(410, 'lean', 2), said(430, 'rich'))).toBeCloseTo(STEP, 2);
    expect(asked(said(410, 'lean'), said(420, null))).toBeCloseTo(STEP, 3);
  });

  it('goes on from what came along with a shared machine, which a second lean one never takes back', () => {
    const tonight = tonightOf(machine, [said(410, 'lean')])!;
    const along = { ...machine, tonight };
    expect(tonightOf(along, [])).toEqual(tonight);
    expect(tonightOf(along, [said(410, 'lean')])).toEqual(tonight);
    expect(tonightOf(along, [said(420, 'lean')])?.logAreas[0]).toBeCloseTo(Math.log(430 / 410), 2);
    expect(tonightOf(along, [said(410, 'right')])).toBeNull();
  });

  it('never makes anything leaner than the baseline, and never asks for more than plugs can mean', () => {
    expect(asked(said(410, 'rich'))).toBe(0);
    expect(asked(said(410, 'rich', 3), said(400, 'right'))).toBe(0);
    expect(asked(said(490, 'lean', 10))).toBeLessThanOrEqual(0.12);
  });

  it('counts for the cylinder it was seen in', () => {
    const triple = machineOf({ carburettors: [410, 400, 410].map((main) => ({ main })) });
    const tonight = tonightOf(triple, [
      {
        run: 'Round 3',
        air: AIR,
        setting: on(410, 400, 410),
        verdicts: ['right', 'lean', 'right'],
        sizes: null,
      },
    ])!;
    expect(tonight.logAreas[0]).toBe(0);
    expect(tonight.logAreas[1]).toBeGreaterThan(0.02);
    const [first, middle] = drifts({ ...triple, tonight }, on(410, 400, 410), AIR);
    expect(first).toBeCloseTo(0, 6);
    expect(middle).toBeLessThan(-0.02);
    expect(tonightSentence({ ...triple, tonight })).toContain('in cylinder 2');
  });
});

describe('The plan after a lean verdict', () => {
  /** A night like the baseline's air: without a verdict the baseline stays in all night. */
  const plan = (given: Partial<Machine>) =>
    expectOk(makePlan(requestOf({ machine: machineOf(given), series: seriesOf(Array(17).fill(-6)) })));

  it('is a size richer from the next run on, and says in what run it was', () => {
    expect(plan({}).runs.every(({ setting }) => setting.mains[0] === 410)).toBe(true);
    const tonight = tonightOf(machine, [said(410, 'lean')])!;
    const after = plan({ tonight });
    expect(after.runs.every(({ setting }) => setting.mains[0] === 420)).toBe(true);
    expect(after.hours[0]!.baselineState).toBe('lean');
    expect(after.swaps[0]!.reason).toMatchObject({ code: 'old-turns-lean', run: 0 });
    expect(tonightSentence({ ...machine, tonight })).toMatch(
      /^Round 3 was logged lean: planned 2\.4.% richer than the baseline until a run says otherwise\. It is one verdict\.$/,
    );
  });
});
