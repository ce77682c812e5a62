import { describe, expect, it } from 'vitest';
import { type PictureRequest, pictureOf } from '@/lib/plan/night-picture';
import { localClock } from '@/lib/time/zone';
import { nightCase } from '../night/night-case';

const { night, plan } = nightCase();

function picture(change: Partial<PictureRequest> = {}) {
  const place = { latitude: 47.42, longitude: -93.61 };
  const made = pictureOf({
    plan,
    machine: night.machine,
    carburettor: 0,
    zone: night.zone,
    place,
    span: 'runs',
    ...change,
  });
  if (made === null) throw new Error('no picture');
  return made;
}

describe('the picture of a night', () => {
  it('shows dusk before the first run and ends after the last', () => {
    const { from, to, sun } = picture();
    const dusk = sun.find(({ kind }) => kind === 'dusk');
    expect(dusk?.at).toBeGreaterThan(from);
    expect(localClock(to, night.zone)).toBe('02:00');
  });

  it('can show all hours there are', () => {
    const { from, to } = picture({ span: 'hours' });
    expect([localClock(from, night.zone), localClock(to, night.zone)]).toEqual(['12:00', '07:00']);
  });

  it('steps from jet to jet inside the swap windows, with no gap between the steps', () => {
    const { stairs, swaps } = picture();
    expect(stairs.map(({ size }) => size)).toEqual(plan.stints.map(({ setting }) => setting.mains[0]));
    stairs.slice(1).forEach((stair, i) => {
      expect(stair.from).toBe(stairs[i]?.to);
      expect(stair.from).toBeGreaterThanOrEqual(swaps[i]?.from ?? 0);
      expect(stair.from).toBeLessThanOrEqual(swaps[i]?.to ?? 0);
    });
  });

  it('shows what was put in, from the end of the run before, also where no run was made on it', () => {
    const [swap, ...others] = plan.swaps;
    const before = plan.runs[swap!.beforeRun - 1]!;
    const wrong = { ...swap!.from, mains: swap!.from.mains.map((main) => main - 20) };
    const put = { ...plan, swaps: [{ ...swap!, from: wrong }, ...others] };
    const sizes = picture({ plan: put }).stairs.map(({ size }) => size);
    expect(sizes).toEqual([before.setting.mains[0], wrong.mains[0], swap!.to.mains[0]]);
    const [, stair] = picture({ plan: put }).stairs;
    expect(stair!.from).toBe(plan.sortedRuns[before.run]!.end);
    // Jets that are in with no swap to come went in some time after the run before.
    const done = picture({ plan: { ...plan, swaps: [] } }).stairs;
    expect(done.map(({ size }) => size)).toEqual([before.setting.mains[0], swap!.to.mains[0]]);
    expect(done[1]!.from).toBe(plan.sortedRuns[before.run]!.end);
    expect(done[0]!.to).toBe(done[1]!.from);
  });

  it('keeps every lane of the plan and the whole fan within its range of sizes', () => {
    const { least, most, stairs, hours } = picture();
    for (const { richEdge, leanEdge } of stairs) {
      expect(richEdge).toBeGreaterThan(least);
      expect(leanEdge).toBeLessThan(most);
    }
    for (const { idealLow, idealHigh } of hours) {
      expect(idealLow[0]).toBeGreaterThan(least);
      expect(idealHigh[0]).toBeLessThan(most);
    }
  });

  it('shows the second carburettor on its own jets', () => {
    const [first] = picture({ carburettor: 1 }).stairs;
    expect(first?.size).toBe(plan.stints[0]?.setting.mains[1]);
  });

  it('marks a full hour for every hour of real time in the night the clocks go back', () => {
    const span = { span: 'hours', zone: 'Europe/Berlin' } as const;
    const clocks = picture(span).ticks.map((at) => localClock(at, 'Europe/Berlin'));
    // No change of clocks in January: 19:00 to 14:00 the next day, one tick an hour.
    expect(clocks).toHaveLength(20);
    expect(new Set(clocks).size).toBe(20);
  });
});
