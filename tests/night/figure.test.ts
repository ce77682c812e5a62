import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { acrossOf, placeOf, sizeTicks } from '@/lib/night/across';
import { type FigureRow, figureOf } from '@/lib/night/figure';
import { nameShare, roomBeside } from '@/lib/night/ghost';
import { traced } from '@/lib/night/trace';
import type { Plan } from '@/lib/plan/types';
import { addMinutes } from '@/lib/time/instant';
import { ratio } from '@/lib/units/quantity';
import { chicago, nightCase } from './night-case';

const machine = nightCase().night.machine;
const across = acrossOf(machine);

function rowsAt(clock: string): { readonly rows: readonly FigureRow[]; readonly plan: Plan } {
  const { plan, now } = nightCase(chicago('2027-01-16', clock));
  return { rows: figureOf({ plan, machine, across, now }).rows, plan };
}

const runsOf = (rows: readonly FigureRow[]) => rows.flatMap((row) => (row.kind === 'run' ? [row] : []));
const named = (rows: readonly FigureRow[]) =>
  rows.map((row) => (row.kind === 'run' ? String(row.run.run + 1) : row.kind));

describe('the places across', () => {
  it('have lean on the left, rich on the right, and the limits at the edges of the banks', () => {
    expect(placeOf(across, -machine.limits.lean).x).toBeCloseTo(across.leanEdge, 12);
    expect(placeOf(across, machine.limits.rich).x).toBeCloseTo(across.richEdge, 12);
    expect(placeOf(across, -0.001).x).toBeLessThan(across.baseline);
    expect(placeOf(across, 0.001).x).toBeGreaterThan(across.baseline);
  });

  it('end at the edges: what lies beyond is marked and can still be seen', () => {
    for (const [drift, side] of [
      [-0.5, 'lean'],
      [0.5, 'rich'],
    ] as const) {
      const { x, beyond } = placeOf(across, drift);
      expect(beyond).toBe(side);
      expect(x).toBeGreaterThan(0);
      expect(x).toBeLessThan(1);
    }
  });

  it('have ticks a jet size apart, the baseline one of them', () => {
    const ticks = sizeTicks(machine, across, 410);
    expect(ticks).toContain(across.baseline);
    // Flow marks: 420 passes 420/410 of what 410 does.
    expect(ticks).toContainEqual(expect.closeTo(placeOf(across, 10 / 410).x, 2));
    expect([...ticks].sort((a, b) => a - b)).toEqual(ticks);
  });
});

describe('the rows', () => {
  it('are a run each, a swap before the run it is for, and now where the clock has it', () => {
    expect(named(rowsAt('18:15').rows)).toEqual(['now', '1', '2', 'swap', '3', '4', '5', '6', '7', '8']);
    expect(named(rowsAt('19:30').rows)).toEqual(['1', 'now', '2', 'swap', '3', '4', '5', '6', '7', '8']);
    expect(named(rowsAt('20:05').rows)).toEqual(['1', '2', 'now', 'swap', '3', '4', '5', '6', '7', '8']);
  });

  it('give a swap the time it can begin at, and once that is over the time it has to', () => {
    const swapAt = (clock: string) => rowsAt(clock).rows.find(({ kind }) => kind === 'swap');
    expect(swapAt('19:30')).toMatchObject({ at: chicago('2027-01-16', '20:00'), due: false });
    expect(swapAt('20:05')).toMatchObject({ at: chicago('2027-01-16', '20:15'), due: true });
  });

  it('leave now out of a night that is days away', () => {
    const { plan, now } = nightCase();
    const rows = figureOf({ plan, machine, across, now: addMinutes(now, -3 * 24 * 60) }).rows;
    expect(named(rows)).not.toContain('now');
  });

  it.each([1, 60])('are drawn for %d runs', (count) => {
    const { plan, now } = nightCase();
    const [run, times] = [plan.runs[0]!, plan.sortedRuns[0]!];
    const many = {
      ...plan,
      swaps: [],
      runs: Array.from({ length: count }, (_, i) => ({ ...run, run: i })),
      sortedRuns: Array.from({ length: count }, (_, i) => ({
        ...times,
        start: addMinutes(times.start, i * 10),
        end: addMinutes(times.start, i * 10 + 5),
      })),
    };
    expect(runsOf(figureOf({ plan: many, machine, across, now }).rows)).toHaveLength(count);
  });
});

describe('what is drawn of a run', () => {
  it('stands where the plan has it, with its likely range around it', () => {
    const { rows, plan } = rowsAt('18:15');
    for (const { run, dot } of runsOf(rows)) {
      expect(dot?.at.x).toBeCloseTo(placeOf(across, plan.runs[run.run]!.leanest).x, 12);
      expect(dot!.from.x).toBeLessThan(dot!.at.x);
      expect(dot!.to.x).toBeGreaterThan(dot!.at.x);
    }
  });

  it('is nothing where nothing is known, and the line ends there', () => {
    const { plan, now } = nightCase();
    for (const state of ['beyond-hours', 'out'] as const) {
      const runs = plan.runs.map((run) => (run.run >= 6 ? { ...run, state } : run));
      const rows = runsOf(figureOf({ plan: { ...plan, runs }, machine, across, now }).rows);
      expect(rows.filter(({ dot }) => dot === null).map(({ run }) => run.run)).toEqual([6, 7]);
      expect(rows.filter(({ line }) => line.length === 0).map(({ run }) => run.run)).toEqual([6, 7]);
      expect(rows[5]?.line.every(({ y2 }) => y2 <= 0.5)).toBe(true);
    }
  });

  it('is drawn at its rich side where it is rich', () => {
    const { plan, now } = nightCase();
    const runs = plan.runs.map((run) => ({ ...run, grade: 'rich' as const, richest: ratio(0.2) }));
    const rows = runsOf(figureOf({ plan: { ...plan, runs }, machine, across, now }).rows);
    expect(rows.map(({ dot }) => dot?.at.beyond)).toEqual(rows.map(() => 'rich'));
  });
});

describe('the line of the plan', () => {
  it('is whole from row to row, and steps where jets are put in', () => {
    const { rows } = rowsAt('19:30');
    const strokes = rows.map(({ line }) => line);
    for (const [i, line] of strokes.entries()) {
      const next = strokes[i + 1];
      if (next === undefined) continue;
      expect(line.at(-1)).toMatchObject({ x2: expect.closeTo(next[0]!.x1, 9), y2: 1 });
      expect(next[0]?.y1).toBe(0);
    }
    const step = rows.find(({ kind }) => kind === 'swap')?.line ?? [];
    expect(step.filter(({ y1, y2 }) => y1 === y2)).toHaveLength(1);
    expect(step[1]!.x2).toBeGreaterThan(step[1]!.x1);
  });

  it('shares out what lies between two known rows', () => {
    const at = (x: number) => ({ in: x, out: x });
    const [, between] = traced([at(0), 'between', 'between', at(3)]);
    expect(between).toEqual([{ x1: 0.5, y1: 0, x2: 1.5, y2: 1 }]);
  });
});

describe('the jets that would have stayed in', () => {
  it('run on from the last run on them, leaner and leaner, with a cross where they first go over the limit', () => {
    const { rows, plan } = rowsAt('19:30');
    const reason = plan.swaps[0]?.reason;
    const first = reason?.code === 'old-turns-lean' ? reason.run : -1;
    const crossed = runsOf(rows).filter(({ cross }) => cross !== null);
    expect(crossed.map(({ run }) => run.run)).toEqual([first]);
    // What the planner counts as over its risk of one in twenty is drawn as reaching into the bank.
    expect(crossed[0]!.cross!.to.x).toBeLessThanOrEqual(across.leanEdge + 0.02);
    const ends = runsOf(rows).flatMap(({ ghost }) => ghost.slice(-1).map(({ x2 }) => x2));
    expect(ends).toEqual([...ends].sort((a, b) => b - a));
    expect(ends.at(-1)).toBeLessThan(across.leanEdge);
  });

  it('are not drawn where nothing is put in', () => {
    const { plan, now } = nightCase();
    const rows = figureOf({ plan: { ...plan, swaps: [] }, machine, across, now }).rows;
    expect(rows.flatMap(({ ghost }) => ghost)).toEqual([]);
  });
});

describe('the name of the old jets', () => {
  it('has room up to the plan’s line, over the edge of a bank only where it has to, and past the drawing only where words leave room', () => {
    const share = fc.double({ min: 0.02, max: 0.98, noNaN: true });
    fc.assert(
      fc.property(share, fc.option(share), fc.constantFrom(410, 162.5), (x, line, main) => {
        const enough = nameShare({ mains: [main], trim: null });
        const { from, to, side } = roomBeside({ x, line, enough }, across);
        // Past the left end only as far as the name needs.
        expect(from).toBeGreaterThanOrEqual(Math.min(0, x - enough));
        expect(to).toBeLessThanOrEqual(1);
        expect(side === 'right' ? from : to).toBe(x);
        const over = (others: readonly number[]) => others.filter((other) => other > from && other < to);
        expect(over(line === null ? [] : [line])).toEqual([]);
        // An edge of a bank lies under it only where there is too little room up to there on both sides.
        const bounds = [0, across.leanEdge, across.richEdge, 1, ...(line === null ? [] : [line])];
        const left = x - Math.max(...bounds.filter((bound) => bound <= x));
        const right = Math.min(...bounds.filter((bound) => bound > x)) - x;
        if (Math.max(left, right) >= enough) expect(over([across.leanEdge, across.richEdge])).toEqual([]);
      }),
    );
  });

  it('stands beside the line of the old jets in the row after the one they go over in', () => {
    const { rows, plan } = rowsAt('18:15');
    const named = runsOf(rows).filter(({ ghostName }) => ghostName !== null);
    const crossed = runsOf(rows).find(({ cross }) => cross !== null);
    expect(named.map(({ run }) => run.run)).toEqual([crossed!.run.run + 1]);
    expect(named[0]!.ghostName!.setting).toEqual(plan.swaps[0]!.from);
    expect(crossed!.cross!.side).toBe('lean');
  });
});
