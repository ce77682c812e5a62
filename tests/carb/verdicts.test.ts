import { describe, expect, it } from 'vitest';
import { evidenceOfLog } from '@/lib/carb/jet-evidence';
import { tonightOf } from '@/lib/carb/tonight';
import { eachCylinder, leanestVerdict, verdictFields } from '@/lib/carb/verdicts';
import { verdictText } from '@/lib/words/log';
import { airOf, raceMachine } from '../support/race-machine';

const machine = raceMachine();
const AIR = airOf(-10, 990, 0.7);
const setting = { mains: [420, 420], trim: null };
const entry = { id: 'a', air: AIR, setting, judgedBy: 'plugs' as const };
const seen = (verdicts: Parameters<typeof verdictFields>[0], sizes: number | null = null) => {
  const fields = verdictFields(verdicts, sizes);
  return evidenceOfLog(machine, [{ ...entry, ...fields, verdict: fields.verdict ?? 'right' }])[0]!;
};
const STEP = Math.log(430 / 420);

describe('Verdicts cylinder by cylinder', () => {
  it('make the leanest the verdict of the run, for that cylinder seizes first', () => {
    expect(leanestVerdict(['rich', 'right', null])).toBe('right');
    expect(leanestVerdict(['rich', 'lean'])).toBe('lean');
    expect(leanestVerdict([null, 'rich'])).toBe('rich');
    expect(leanestVerdict([null, null])).toBeNull();
  });

  it('are kept only where they differ, and sizes only where the leanest are off', () => {
    expect(verdictFields(['lean', 'lean'], 2)).toEqual({ verdict: 'lean', sizes: 2 });
    expect(verdictFields(['right', 'rich'], 2)).toEqual({
      verdict: 'right',
      verdicts: ['right', 'rich'],
      sizes: 0,
    });
    expect(verdictFields([null, null], 2)).toEqual({ verdict: null, sizes: null });
    expect(verdictFields(['lean', null], 1.5)).toEqual({
      verdict: 'lean',
      verdicts: ['lean', null],
      sizes: 1.5,
    });
  });

  it('tell by how many sizes of the leanest only', () => {
    expect(eachCylinder({ verdict: 'lean', verdicts: ['lean', 'rich', null], sizes: 2 }, 3)).toEqual([
      { verdict: 'lean', sizes: 2 },
      { verdict: 'rich', sizes: null },
      null,
    ]);
    expect(eachCylinder({ verdict: 'rich', sizes: 1 }, 2)).toEqual([
      { verdict: 'rich', sizes: 1 },
      { verdict: 'rich', sizes: 1 },
    ]);
  });

  it('read by place', () => {
    expect(verdictText(verdictFields(['right', 'lean', 'right'], 1.5))).toBe(
      '1.5 sizes lean in cylinder 2, good in cylinder 1 and 3',
    );
    expect(verdictText(verdictFields(['rich', null], null))).toBe(
      'rich in cylinder 1, cylinder 2 not looked at',
    );
    expect(verdictText(verdictFields(['lean', 'lean'], null))).toBe('lean');
  });
});

describe('As evidence for learning', () => {
  it('the mean of the cylinders that were looked at counts', () => {
    const level = Math.log(420 / 410);
    expect(seen(['lean', 'right'], 2).logArea).toBeCloseTo(level + STEP, 9);
    expect(seen(['lean', null], 2).logArea).toBeCloseTo(level + 2 * STEP, 9);
    expect(seen(['lean', 'rich'], 1).logArea).toBeCloseTo(level, 9);
    expect(seen(['lean', 'lean'], 1).logArea).toBeCloseTo(level + STEP, 9);
  });

  it('two plugs read by one eye are no surer than the less sure of them', () => {
    expect(seen(['lean', 'right'], 1).sd).toBeCloseTo(seen(['lean', 'lean'], 1).sd, 9);
    expect(seen(['lean', 'right']).sd).toBeCloseTo(seen(['lean', 'lean']).sd, 9);
    expect(seen(['right', null]).sd).toBeLessThan(seen(['lean', null]).sd);
  });
});

describe('As an alarm of tonight', () => {
  const richer = { run: 'Round 1', air: AIR, setting, verdicts: ['lean', 'lean'] as const, sizes: 2 };
  const second = { ...richer, run: 'Round 2', verdicts: ['lean', 'rich'] as const, sizes: 3 };

  it('a lean cylinder by three sizes does not make the rich one beside it three sizes leaner', () => {
    const [lean, rich] = tonightOf(machine, [richer, second])!.logAreas;
    // Asked by Round 1: two sizes over 420. Rich without a number is one size, from 420.
    const one = tonightOf(machine, [richer, { ...second, verdicts: [null, 'rich'], sizes: null }])!;
    expect(rich).toBeCloseTo(one.logAreas[1]!, 9);
    expect(lean).toBeGreaterThan(one.logAreas[0]!);
  });
});
