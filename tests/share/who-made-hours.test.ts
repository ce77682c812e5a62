import { describe, expect, it } from 'vitest';
import type { Hour, Sky } from '@/lib/hours/series';
import { temperatureError } from '@/lib/plan/forecast-error';
import { expectOk } from '@/lib/result/result';
import { keptNight } from '@/lib/share/kept-night';
import { makeSharedNight } from '@/lib/share/make-shared-night';
import { packNight, unpackNight } from '@/lib/share/night-link';
import { sharedSeries } from '@/lib/share/night-requests';
import { metre, ratio, speedMs } from '@/lib/units/quantity';
import { COLD_NIGHT } from '../support/plan-cases';
import { sharedEvening } from '../support/shared-evening';

const CLEAR: Sky = { cloudCover: ratio(0.12), wind: speedMs(1.4), snowDepth: metre(0.3), daylight: false };

/** Hours that went through a link, and as they were before. */
function throughLink(more: Partial<Hour>) {
  const { event, machines } = sharedEvening();
  const first = Date.parse(event.runs[0]!.start) - COLD_NIGHT.hours[0]!.at;
  const hours = COLD_NIGHT.hours.map(({ rawModel: _, ...hour }): Hour => {
    return { ...hour, at: (hour.at + first) as Hour['at'], ...more };
  });
  const sharedAt = hours[0]!.at;
  const series = { ...COLD_NIGHT, hours };
  const sent = makeSharedNight({ event, machines: [], series, hoursTyped: false, readings: [], sharedAt });
  const night = expectOk(unpackNight(packNight({ ...sent, machines })));
  return { before: series, night, after: expectOk(sharedSeries(night)) };
}

/** How sure the planner is of hours, in the middle of them [K]. */
function doubtOf({ before, after }: ReturnType<typeof throughLink>) {
  const at = after.hours[4]!.at;
  const [here, there] = [before, after].map((series) => {
    const source = { ...series.source, issuedAt: at, fetchedAt: at };
    const error = temperatureError({ series: { ...series, source }, now: at });
    return { mean: error.mean(at), sd: error.sd(at) };
  });
  return { here: here!, there: there! };
}

describe('Hours in a link', () => {
  it('say who made them, and nothing where nobody knows', () => {
    for (const rawModel of [true, false]) {
      const { after } = throughLink({ rawModel });
      expect(after.hours.every((hour) => hour.rawModel === rawModel)).toBe(true);
    }
    expect(throughLink({}).after.hours.some((hour) => hour.rawModel !== undefined)).toBe(false);
  });

  it('are as sure where they arrive as where they were sent', () => {
    for (const more of [
      { rawModel: true, sky: CLEAR },
      { rawModel: true, sky: { ...CLEAR, cloudCover: ratio(0.9) } },
      { rawModel: true, sky: { ...CLEAR, daylight: true } },
      { rawModel: true },
      { rawModel: false, sky: CLEAR },
      {},
    ]) {
      const { here, there } = doubtOf(throughLink(more));
      // Hundredths of a kelvin and tenths of a sky travel.
      expect(there.mean, JSON.stringify(more)).toBeCloseTo(here.mean, 2);
      expect(there.sd, JSON.stringify(more)).toBeCloseTo(here.sd, 2);
    }
  });

  it('say it still when the night is kept', () => {
    const { night } = throughLink({ rawModel: true, sky: CLEAR });
    let id = 0;
    const { forecast } = keptNight(night, () => `k${id++}`);
    const kept = forecast?.value.forecast.hours[0];
    expect(kept).toMatchObject({ rawModel: true, cloudCover: 0.1, windMs: 1, snowDepthM: 0.3 });
  });
});
