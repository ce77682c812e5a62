import { describe, expect, it } from 'vitest';
import { makePlan } from '@/lib/plan/make-plan';
import type { PlanRequest, Reading } from '@/lib/plan/types';
import { expectOk } from '@/lib/result/result';
import { standingOf } from '@/lib/standing/standing';
import { addMinutes, type Instant } from '@/lib/time/instant';
import { celsiusToKelvin } from '@/lib/units/convert';
import { clubReadingSentence } from '@/lib/words/reading-worth';
import { makeBriefing } from '@/tests/support/make-briefing';
import { COLD_NIGHT, clock, machineOf, requestOf, runsOf, seriesOf } from '@/tests/support/plan-cases';

const askedOf = (request: PlanRequest) => standingOf(request, expectOk(makePlan(request))).reading;

/** A reading of what the hours say, which changes no mind. */
function readAt(at: Instant, more: Partial<Reading> = {}): Reading {
  const hour = COLD_NIGHT.hours.findLast((each) => each.at <= at)!;
  return {
    id: `r${at}`,
    at,
    temperature: hour.temperature,
    stationPressure: null,
    relativeHumidity: null,
    ...more,
  };
}

/** Every five minutes of an evening: about which run a reading was asked for; whoever reads does so when first asked. */
function walk(request: PlanRequest, reads: boolean) {
  let readings = request.readings;
  return Array.from({ length: 140 }, (_, i) => addMinutes(clock(16), 5 * i)).map((now) => {
    const asked = askedOf({ ...request, readings, now });
    if (asked !== null && reads) readings = [...readings, readAt(now)];
    return { now, asked };
  });
}

describe('The reading that is asked for', () => {
  const request = requestOf({ runs: runsOf({ first: 18, every: 60, count: 8 }) });
  const runs = request.runs;

  it('comes half an hour before it tells most, and goes when it is too late to act on', () => {
    for (const { now, asked } of walk(request, false)) {
      if (asked === null) continue;
      const start = runs[asked.run]!.start;
      expect(now).toBeGreaterThanOrEqual(start - 55 * 60_000);
      expect(now).toBeLessThanOrEqual(start - 15 * 60_000);
      expect(asked.at).toBeGreaterThanOrEqual(now);
    }
    const about = walk(request, false).flatMap(({ asked }) => (asked === null ? [] : [asked.run]));
    expect(new Set(about).size).toBeGreaterThan(3);
  });

  it('is asked for once for a run by whoever reads, and less often than runs follow each other', () => {
    const about = walk(request, true).flatMap(({ asked }) => (asked === null ? [] : [asked.run]));
    expect(about[0]).toBe(0);
    expect(new Set(about).size).toBe(about.length);
    const dense = { ...request, runs: runsOf({ first: 18, every: 20, count: 24 }) };
    const often = walk(dense, true).flatMap(({ asked }) => (asked === null ? [] : [asked.run]));
    expect(new Set(often).size).toBe(often.length);
    expect(often.length).toBeLessThan(16);
  });

  it('is not asked for again while a reading of that run is in question', () => {
    const now = clock(17.5);
    expect(askedOf({ ...request, now })).not.toBeNull();
    const far = readAt(clock(17.25), { temperature: celsiusToKelvin(20) });
    expect(askedOf({ ...request, now, readings: [far] })).toBeNull();
  });

  it('is asked for again when that reading is taken back', () => {
    const now = clock(17.5);
    const read = askedOf({ ...request, now, readings: [readAt(now)] });
    expect([read, askedOf({ ...request, now, readings: [] })?.run]).toEqual([null, 0]);
  });

  it('follows a delay, and is not asked for by whoever is out, has nothing at stake, or plans a season', () => {
    const now = clock(17.4);
    expect(askedOf({ ...request, now })?.run).toBe(0);
    const later = runs.map((run) => ({
      ...run,
      start: addMinutes(run.start, 60),
      end: addMinutes(run.end, 60),
    }));
    expect(askedOf({ ...request, runs: later, now })).toBeNull();
    expect(askedOf({ ...request, now, outFrom: clock(17) })).toBeNull();
    const mild = seriesOf(new Array<number>(17).fill(-4));
    expect(askedOf({ ...request, series: mild, now })).toBeNull();
    expect(askedOf({ ...request, now: addMinutes(now, -20 * 24 * 60) })).toBeNull();
  });
});

describe('A club', () => {
  const racers = [390, 400, 410].map((main) => ({
    id: `${main}`,
    name: `${main}`,
    boxId: `${main}`,
    machine: machineOf({ carburettors: [{ main }] }),
    runs: runsOf({ first: 18, every: 60, count: 8 }),
    fitted: null,
    made: [],
    accepted: null,
  }));
  const { series, options } = requestOf();
  const sentence = (now: Instant, readings: readonly Reading[] = []) =>
    clubReadingSentence(makeBriefing(racers, { series, readings, now, options }), 'UTC');

  it('is told once for all whose plan it would narrow', () => {
    expect(sentence(clock(16.5))).toBeNull();
    expect(sentence(clock(17.25))).toBe('A reading before 17:35 would narrow 3 plans.');
    expect(sentence(clock(17.7))).toBe('A reading now would narrow 3 plans.');
    expect(sentence(clock(17.7), [readAt(clock(17.5))])).toBeNull();
  });
});
