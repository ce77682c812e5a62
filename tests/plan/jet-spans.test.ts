import { describe, expect, it } from 'vitest';
import { jetSpans } from '@/lib/plan/jet-spans';
import type { PlanHour } from '@/lib/plan/types';
import { HOUR_MS, instant } from '@/lib/time/instant';

const START = Date.UTC(2027, 0, 16, 18);
const at = (hours: number) => instant(START + hours * HOUR_MS);
const lane = { size: 410, worth: 410, richEdge: 400, leanEdge: 420 };

function hoursOf(ideals: readonly number[]): readonly PlanHour[] {
  // Only the time and the ideal of an hour count here.
  return ideals.map((ideal, i) => ({ at: at(i), ideal: [ideal] }) as unknown as PlanHour);
}

const through = (ideals: readonly number[]) => ({
  hours: hoursOf(ideals),
  carburettor: 0,
  from: at(0),
  to: at(ideals.length - 1),
});

describe('a jet through the night', () => {
  it('stays right while the ideal stays in its lane', () => {
    expect(jetSpans(lane, through([405, 410, 415]))).toEqual([{ state: 'right', from: at(0), to: at(2) }]);
  });

  it('turns lean where the ideal passes the lean edge, and right again where it comes back', () => {
    expect(jetSpans(lane, through([410, 415, 425, 415]))).toEqual([
      { state: 'right', from: at(0), to: at(1.5) },
      { state: 'lean', from: at(1.5), to: at(2.5) },
      { state: 'right', from: at(2.5), to: at(3) },
    ]);
  });

  it('passes from rich through right to lean in one hour that is steep enough', () => {
    expect(jetSpans(lane, through([390, 430]))).toEqual([
      { state: 'rich', from: at(0), to: at(0.25) },
      { state: 'right', from: at(0.25), to: at(0.75) },
      { state: 'lean', from: at(0.75), to: at(1) },
    ]);
  });

  it('says nothing of a stretch without hours', () => {
    expect(jetSpans(lane, { ...through([410, 411]), from: at(3), to: at(4) })).toEqual([]);
  });
});
