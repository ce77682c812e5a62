import { describe, expect, it } from 'vitest';
import { makePlan } from '@/lib/plan/make-plan';
import { readingWorth } from '@/lib/plan/reading-worth';
import type { PlanRequest } from '@/lib/plan/types';
import { expectOk } from '@/lib/result/result';
import { US_UNITS } from '@/lib/units/choice';
import { celsiusToKelvin } from '@/lib/units/convert';
import { readingWorthSentence } from '@/lib/words/reading-worth';
import { clock, requestOf, runsOf, seriesOf } from '@/tests/support/plan-cases';
import { plain } from '@/tests/words/plan-of';

const planOf = (request: PlanRequest) => expectOk(makePlan(request));
const worthOf = (request: PlanRequest) => readingWorth(request, planOf(request));

const readAt = (hours: number) => ({
  id: `r${hours}`,
  at: clock(hours),
  temperature: celsiusToKelvin(-9),
  stationPressure: null,
  relativeHumidity: null,
});

describe('What a reading would tell', () => {
  it('is asked for as late as leaves time to act on it, and pays on a night that turns lean', () => {
    const worth = worthOf(requestOf())!;
    // Runs from 18:00, a swap of 15 minutes, ten to read and type.
    expect(worth).toMatchObject({ run: 0, at: clock(18) - 25 * 60_000, pays: true });
    expect(worth.sdAfter).toBeLessThan(worth.sdBefore);
  });

  it('is what the doubt narrows to once it is taken, whatever it says', () => {
    const request = requestOf({ now: clock(17.5) });
    const worth = worthOf(request)!;
    for (const celsius of [-2, -6, -12]) {
      const read = { ...readAt(0), at: worth.at, temperature: celsiusToKelvin(celsius) };
      const after = worthOf({ ...request, readings: [read] })!;
      expect(after.sdBefore).toBeCloseTo(worth.sdAfter, 12);
      expect(after.sdBefore - after.sdAfter).toBeLessThan(worth.sdBefore - worth.sdAfter);
    }
  });

  it('pays less and less right after one was taken, and again hours later', () => {
    const request = requestOf({ now: clock(20), readings: [readAt(19.9)] });
    expect(worthOf(request)!.pays).toBe(false);
    expect(worthOf({ ...request, now: clock(24.4) })!.pays).toBe(true);
  });

  it('does not pay where nothing hangs on it', () => {
    const request = requestOf({
      series: seriesOf(new Array<number>(17).fill(-4)),
      runs: runsOf({ first: 19, every: 60, count: 3 }),
    });
    expect(worthOf(request)).toMatchObject({ pays: false });
    expect(worthOf({ ...request, now: clock(30) })).toBeNull();
  });

  it('is one sentence, or none', () => {
    const plan = planOf(requestOf());
    const reading = readingWorth(requestOf(), plan);
    const voice = { zone: 'UTC', units: US_UNITS };
    expect(plain(readingWorthSentence({ reading, plan, now: clock(17.2) }, voice))).toMatch(
      /^Read the thermometer at 17:35: it would tell the temperature of Round 1 to ±\d\.\d °F, not ±\d\.\d °F\.$/u,
    );
    expect(plain(readingWorthSentence({ reading, plan, now: reading!.at }, voice))).toMatch(
      /^Read the thermometer now: it would tell/,
    );
    expect(readingWorthSentence({ reading: null, plan, now: clock(17.2) }, voice)).toBeNull();
  });
});
