import { describe, expect, it } from 'vitest';
import { hardwareShift, hardwareShifts } from '@/lib/carb/hardware';
import { USUAL_LOG_STEP } from '@/lib/carb/size-step';
import { expectOk } from '@/lib/result/result';
import { ratio } from '@/lib/units/quantity';

const shiftOf = (...args: Parameters<typeof hardwareShift>) => expectOk(hardwareShift(...args));

describe('hardware changed since the baseline', () => {
  it('every change asks for the baseline to be proven again', () => {
    const changes = [
      { kind: 'bored', amount: 1 },
      { kind: 'airbox-off', amount: null },
      { kind: 'airbox-on', amount: null },
      { kind: 'open-filters', amount: null },
      { kind: 'pipe', amount: null },
      { kind: 'big-bore', amount: 10 },
      { kind: 'compression', amount: null },
      { kind: 'fuel', amount: 0.1 },
    ] as const;
    for (const change of changes) {
      const shift = shiftOf(change);
      expect(shift.reprove).toBe(true);
      expect(shift.sd).toBeGreaterThan(0);
    }
  });

  it('rules of thumb are named as such', () => {
    for (const kind of ['bored', 'airbox-off', 'airbox-on', 'open-filters', 'pipe'] as const)
      expect(shiftOf({ kind, amount: 1 }).source).toBe('common practice, no source');
  });

  it('taking the airbox off and fitting it again is nothing, with more doubt', () => {
    const { total } = expectOk(
      hardwareShifts([
        { kind: 'airbox-off', amount: null },
        { kind: 'airbox-on', amount: null },
      ]),
    );
    expect(total.log).toBeCloseTo(0, 15);
    expect(total.sd).toBeCloseTo(1.5 * Math.SQRT2 * USUAL_LOG_STEP, 12);
  });

  it('displacement and compression shift nothing by themselves: the venturi draws fuel in step with air', () => {
    for (const kind of ['big-bore', 'compression'] as const) {
      const shift = shiftOf({ kind, amount: 10 });
      expect(shift.log).toBe(0);
      expect(shift.source).toBe('elementary-carburettor');
    }
    expect(shiftOf({ kind: 'big-bore', amount: 30 }).sd).toBeGreaterThan(
      shiftOf({ kind: 'big-bore', amount: 5 }).sd,
    );
  });

  it('a race fuel of unknown make-up claims no shift, only doubt', () => {
    const shift = shiftOf({ kind: 'fuel', amount: null });
    expect(shift.log).toBe(0);
    expect(shift.sd).toBeCloseTo(1.5 * USUAL_LOG_STEP, 12);
  });

  it('a fuel is counted from the fuel before it', () => {
    const straight = expectOk(hardwareShifts([{ kind: 'fuel', amount: 0.85 }], ratio(0)));
    const byWay = expectOk(
      hardwareShifts(
        [
          { kind: 'fuel', amount: 0.1 },
          { kind: 'fuel', amount: 0.85 },
        ],
        ratio(0),
      ),
    );
    expect(byWay.total.log).toBeCloseTo(straight.total.log, 12);
    const back = expectOk(
      hardwareShifts(
        [
          { kind: 'fuel', amount: 0.85 },
          { kind: 'fuel', amount: 0 },
        ],
        ratio(0),
      ),
    );
    expect(back.total.log).toBeCloseTo(0, 12);
  });

  it('no change is no shift and no doubt', () => {
    expect(expectOk(hardwareShifts([]))).toEqual({ each: [], total: { log: 0, sd: 0 } });
  });

  it.each([
    [
      { kind: 'bored', amount: null },
      { code: 'amount-missing', kind: 'bored' },
    ],
    [
      { kind: 'big-bore', amount: null },
      { code: 'amount-missing', kind: 'big-bore' },
    ],
    [
      { kind: 'fuel', amount: 10 },
      { code: 'amount-out-of-range', kind: 'fuel', amount: 10, most: 1 },
    ],
    [
      { kind: 'bored', amount: -1 },
      { code: 'amount-out-of-range', kind: 'bored', amount: -1, most: 10 },
    ],
    [
      { kind: 'bored', amount: Number.NaN },
      { code: 'amount-out-of-range', kind: 'bored', amount: Number.NaN, most: 10 },
    ],
  ] as const)('%j is refused with its reason', (change, reason) => {
    expect(hardwareShift(change)).toEqual({ ok: false, reason });
    expect(hardwareShifts([{ kind: 'pipe', amount: null }, change])).toEqual({ ok: false, reason });
  });
});
