import { describe, expect, it } from 'vitest';
import { evidenceOfChart, evidenceOfLog, type LogEntry } from '@/lib/carb/jet-evidence';
import { ratio } from '@/lib/units/quantity';
import { airOf, raceMachine } from '../support/race-machine';

const machine = raceMachine();
const entry = (change: Partial<LogEntry>): LogEntry => ({
  id: 'a',
  air: airOf(-10, 990, 0.7),
  setting: { mains: [420, 420], trim: null },
  verdict: 'right',
  sizes: null,
  judgedBy: 'plugs',
  ...change,
});
const first = (change: Partial<LogEntry>) => evidenceOfLog(machine, [entry(change)])[0]!;
const step = Math.log(430 / 420);

describe('a run as evidence', () => {
  it('found right, the jet fitted is the right jet', () => {
    expect(first({}).logArea).toBeCloseTo(Math.log(420 / 410), 12);
  });

  it('found two sizes rich, the right jet is two smaller; found lean, larger', () => {
    expect(first({ verdict: 'rich', sizes: 2 }).logArea).toBeCloseTo(Math.log(420 / 410) - 2 * step, 12);
    expect(first({ verdict: 'lean', sizes: 0.5 }).logArea).toBeCloseTo(Math.log(420 / 410) + step / 2, 12);
  });

  it('with no number, rich is about one size, and less sure', () => {
    const side = first({ verdict: 'rich' });
    expect(side.logArea).toBeCloseTo(first({ verdict: 'rich', sizes: 1 }).logArea, 12);
    expect(side.sd).toBeGreaterThan(1.4 * first({ verdict: 'rich', sizes: 1 }).sd);
  });

  it('plugs read in whole sizes are half a size, and the rounding', () => {
    expect(first({ verdict: 'lean', sizes: 1 }).sd).toBeCloseTo(step * Math.sqrt(0.25 + 1 / 12), 12);
    expect(first({ verdict: 'lean', sizes: 1.5 }).sd).toBeCloseTo(step * Math.sqrt(0.25 + 1 / 48), 12);
  });

  it('a wideband tells more than plugs, plugs more than a clock, and an unnamed judge is no better than plugs', () => {
    const sd = (judgedBy: LogEntry['judgedBy']) => first({ judgedBy }).sd;
    expect(sd('wideband')).toBeLessThan(sd('plugs'));
    expect(sd('plugs')).toBeLessThan(sd('clock'));
    expect(sd(null)).toBeGreaterThan(sd('plugs'));
  });

  it('the trim counts as fuel', () => {
    const trimmed = raceMachine({
      trim: { lowest: 1, highest: 5, baseline: 3, richerPerPosition: ratio(0.02) },
    });
    const [seen] = evidenceOfLog(trimmed, [entry({ setting: { mains: [410, 410], trim: 4 } })]);
    expect(seen!.logArea).toBeCloseTo(Math.log(1.02), 12);
  });

  it('staggered jets count by their mean', () => {
    expect(first({ setting: { mains: [420, 400], trim: null } }).logArea).toBeCloseTo(
      (Math.log(420 / 410) + Math.log(400 / 410)) / 2,
      12,
    );
  });
});

describe('a chart as evidence', () => {
  it('each cell is its jet, known to a rounding', () => {
    const [cell] = evidenceOfChart(machine, [{ id: 'c', air: airOf(10, 900), main: 390 }]);
    expect(cell).toMatchObject({ id: 'c', group: 'chart' });
    expect(cell!.logArea).toBeCloseTo(Math.log(390 / 410), 12);
    expect(cell!.sd).toBeGreaterThan(Math.log(400 / 390) / Math.sqrt(12));
    expect(cell!.sd).toBeLessThan(Math.log(400 / 390) / 2);
  });

  it('bore-marked charts are read by area', () => {
    const bore = raceMachine({ marking: { kind: 'bore' }, carburettors: [{ main: 164 }], box: [] });
    const [cell] = evidenceOfChart(bore, [{ id: 'c', air: airOf(10, 900), main: 160 }]);
    expect(cell!.logArea).toBeCloseTo(2 * Math.log(160 / 164), 12);
  });
});
