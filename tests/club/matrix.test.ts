import { describe, expect, it } from 'vitest';
import { briefingHours, briefingRow, briefingSpan } from '@/lib/club/matrix';
import { HOUR_MS, instant } from '@/lib/time/instant';
import { makeBriefing } from '@/tests/support/make-briefing';
import { clock, DUSK, machineOf, runsOf } from '@/tests/support/plan-cases';
import { boxOf, clubNight, racerOf } from './club-cases';

/** Every full hour of the two days around the night. */
const TICKS = Array.from({ length: 48 }, (_, i) => instant(DUSK + (i - 12) * HOUR_MS));

describe('racers by hours', () => {
  const { planned } = makeBriefing(
    [racerOf({ id: 'a' }), racerOf({ id: 'b', runs: runsOf({ first: 22, every: 60, count: 3 }) })],
    clubNight(),
  );

  it('shows the hours with a run or an act, and no others', () => {
    const hours = briefingHours(planned, TICKS);
    // A runs from 18 to 23, B from 22 to 24 o'clock; a swap before the first run may be due at 17:45.
    expect(hours.filter((hour) => hour >= clock(18))).toEqual([18, 19, 20, 21, 22, 23, 24].map(clock));
    expect(briefingSpan(planned)?.to).toBe(clock(24) + 10 * 60_000);
    expect(briefingSpan([])).toBeNull();
  });

  it('shows in each hour what the plan has in the engine in its runs', () => {
    const hours = briefingHours(planned, TICKS);
    for (const each of planned) {
      const row = briefingRow(each, hours);
      expect(row.cells.map(({ hour }) => hour)).toEqual(hours);
      for (const { run, setting } of each.plan.runs) {
        const start = each.plan.sortedRuns[run]!.start;
        const cell = row.cells.find(({ hour }) => hour === start);
        // Runs of these racers start on the hour, so what the hour starts with is what they run on.
        expect(cell?.settings[0]).toEqual(setting);
        expect(cell?.runs).toContain(run);
      }
    }
  });

  it('shows both settings in the hour of an act', () => {
    const hours = briefingHours(planned, TICKS);
    for (const each of planned)
      for (const swap of each.plan.swaps.filter(({ beforeRun }) => beforeRun > 0)) {
        const cell = briefingRow(each, hours).cells.find(
          ({ hour }) => swap.windowStart >= hour && swap.windowStart < hour + HOUR_MS,
        );
        expect(cell?.settings).toEqual([swap.from, swap.to]);
      }
    expect(planned.flatMap(({ plan }) => plan.swaps).filter(({ beforeRun }) => beforeRun > 0)).not.toEqual(
      [],
    );
  });

  it('says lean where no jet will do, with the count, and none in an hour without a run', () => {
    const [poor] = makeBriefing(
      [racerOf({ id: 'poor', machine: machineOf({ box: boxOf([400, 410]) }) })],
      clubNight(),
    ).planned;
    const row = briefingRow(poor!, [clock(16), clock(18), clock(23)]);
    expect(row.cells.map(({ state }) => state)).toEqual(['none', expect.any(String), 'lean']);
    expect(row.cells[2]?.leanCount).toEqual(poor?.plan.runs.at(-1)?.leanCount);
    expect(row.cells[0]?.leanCount).toBeNull();
  });

  it('says nothing is known of a run beyond the hours', () => {
    const runs = runsOf({ first: 32, every: 120, count: 2 });
    const [row] = makeBriefing([racerOf({ id: 'a', runs })], clubNight()).planned.map((each) =>
      briefingRow(each, [clock(32), clock(34)]),
    );
    expect(row?.cells.map(({ state }) => state)).toEqual(['right', 'unknown']);
  });

  it('says made of a run that is over', () => {
    const night = clubNight({ now: clock(20.5) });
    const [row] = makeBriefing([racerOf({ id: 'a' })], night).planned.map((each) =>
      briefingRow(each, [clock(18), clock(20), clock(21)]),
    );
    expect(row?.cells.map(({ state }) => state).slice(0, 2)).toEqual(['made', 'made']);
    expect(row?.cells[2]?.state).not.toBe('made');
  });
});
