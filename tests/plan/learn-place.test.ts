import { describe, expect, it } from 'vitest';
import { hoursAfterSunset, hoursBetween, nightNumber } from '@/lib/plan/after-sunset';
import { temperatureError } from '@/lib/plan/forecast-error';
import { learnPlace, type PastEvent } from '@/lib/plan/learn-place';
import { makePlan } from '@/lib/plan/make-plan';
import { offsetAt, type PlaceOffset } from '@/lib/plan/place-offset';
import { expectOk } from '@/lib/result/result';
import { HOUR_MS, instant } from '@/lib/time/instant';
import { kelvinDifference } from '@/lib/units/quantity';
import { COLD_NIGHT, clock, DUSK, requestOf, seriesOf } from '@/tests/support/plan-cases';
import {
  afterSunset,
  drawnPlace,
  evenings,
  holds,
  LAKE,
  normals,
  type OffsetByHour,
} from '@/tests/support/taught-places';

const KINDS = [
  // Between-place sd of the mean error: forecast errors as measured, see lib/plan/judgement.ts.
  { kind: 'official', rawModel: false, placeSd: 0.4 },
  { kind: 'rawModel', rawModel: true, placeSd: 1 },
] as const;
type Kind = (typeof KINDS)[number];

const learn = (events: readonly PastEvent[], { kind }: Pick<Kind, 'kind'>) =>
  learnPlace(events, { place: LAKE, kind })!;

function places(count: number, kind: Kind, placeOf: (next: () => number) => OffsetByHour, nights = 5) {
  return Array.from({ length: count }, (_, seed) => {
    const next = normals(seed + 1);
    const truth = placeOf(next);
    return { truth, learnt: learn(evenings(truth, { ...kind, nights, perNight: 3 }, next), kind) };
  });
}

const mean = (values: readonly number[]) => values.reduce((sum, each) => sum + each, 0) / values.length;

describe('The hour after sunset', () => {
  it('goes round the day: an hour before sunset is 23', () => {
    expect(hoursAfterSunset(afterSunset(0), LAKE)).toBeCloseTo(0, 6);
    expect(hoursAfterSunset(afterSunset(5.5), LAKE)).toBeCloseTo(5.5, 6);
    expect(hoursAfterSunset(afterSunset(-1), LAKE)).toBeCloseTo(23, 6);
    expect(hoursBetween(23, 1)).toBe(2);
    expect(hoursBetween(3, 15)).toBe(12);
  });

  it('is counted from 18 h solar time where the sun does not set', () => {
    const svalbard = { latitude: 78, longitude: 15 };
    expect(hoursAfterSunset(instant(Date.UTC(2027, 0, 16, 19)), svalbard)).toBeCloseTo(2, 6);
  });

  it('belongs to one night from noon to noon', () => {
    const night = nightNumber(clock(20), LAKE);
    expect([13, 24, 35].map((hour) => nightNumber(clock(hour), LAKE))).toEqual([night, night, night]);
    expect(nightNumber(clock(37), LAKE)).toBe(night + 1);
  });
});

describe.each(KINDS)('A place, by past nights with $kind hours', (kind) => {
  it('is what its 80 % range says in about four of five places, at hours read and not read', () => {
    const drawn = places(400, kind, (next) => drawnPlace(kind.placeSd, next));
    for (const hours of [1, 4, 9]) {
      const share = mean(drawn.map(({ truth, learnt }) => Number(holds(learnt, truth, hours))));
      // 400 draws of 0.8: one standard deviation is 0.02.
      expect(Math.abs(share - 0.8), `${hours} h: ${share}`).toBeLessThan(0.06);
    }
  });

  it('without an offset is not moved by more than the range says', () => {
    const plain = places(200, kind, () => () => 0);
    const moved = plain.map(({ learnt }) => offsetAt(learnt, afterSunset(4)));
    expect(mean(plain.map(({ learnt, truth }) => Number(holds(learnt, truth, 4))))).toBeGreaterThan(0.8);
    expect(Math.abs(mean(moved.map((at) => at.mean)))).toBeLessThan(0.1);
    for (const at of moved) expect(Math.abs(at.mean)).toBeLessThan(4 * at.sd);
  });

  it('with an offset is found the better the more nights there were, and never overshot on average', () => {
    const found = [1, 5, 60].map((nights) =>
      mean(
        places(40, kind, () => () => -2, nights).map(
          ({ learnt }) => offsetAt(learnt, afterSunset(4)).mean / -2,
        ),
      ),
    );
    expect(found[0]).toBeGreaterThan(0);
    expect(found[1]).toBeGreaterThan(found[0]!);
    expect(found[2]).toBeGreaterThan(found[1]!);
    expect(found[2]).toBeLessThan(1);
    if (kind.kind === 'rawModel') expect(found[2]).toBeGreaterThan(0.75);
  });

  it('moves by less than a third of what one single night was off', () => {
    const [event] = evenings(
      () => 0,
      { ...kind, nights: 1, perNight: 1 },
      () => 0,
    );
    const cold = event!.readings.map((reading) => ({
      ...reading,
      temperature: (reading.temperature - 4) as typeof reading.temperature,
    }));
    const learnt = learn([{ ...event!, readings: cold }], kind);
    expect(learnt).toMatchObject({ nights: 1, ran: expect.closeTo(-4, 9) });
    for (const { mean: at } of learnt.byHour) expect(Math.abs(at)).toBeLessThan(4 / 3);
  });

  it('is known less well where it was never read, and never worse than before', () => {
    const next = normals(3);
    const { byHour } = learn(
      evenings(() => -1, { ...kind, nights: 6, perNight: 3 }, next),
      kind,
    );
    expect(byHour[12]!.sd).toBeGreaterThan(byHour[4]!.sd);
    for (const { sd } of byHour) expect(sd).toBeLessThanOrEqual(kind.placeSd);
  });

  it('is taught by neither the other kind of hours nor a station elsewhere', () => {
    const events = evenings(() => -2, { ...kind, nights: 3, perNight: 2 }, normals(5));
    const other = kind.kind === 'official' ? 'rawModel' : 'official';
    expect(learnPlace(events, { place: LAKE, kind: other })).toBeNull();
    const elsewhere = events.map(({ series, readings }) => ({
      series,
      readings: readings.map((reading) => ({ ...reading, from: 'XFAK' })),
    }));
    expect(learnPlace(elsewhere, { place: LAKE, kind: kind.kind })).toBeNull();
    expect(learnPlace([], { place: LAKE, kind: kind.kind })).toBeNull();
  });

  it('is the same whichever night is told first', () => {
    const events = evenings(() => -2, { ...kind, nights: 4, perNight: 2 }, normals(8));
    const [one, other] = [learn(events, kind), learn([...events].reverse(), kind)];
    for (const [i, { mean: at }] of one.byHour.entries()) expect(at).toBeCloseTo(other.byHour[i]!.mean, 9);
  });

  it('three nights running tell less than three nights weeks apart', () => {
    const apart = evenings(
      () => 0,
      { ...kind, nights: 3, perNight: 2 },
      () => 0,
    );
    const day = 24 * HOUR_MS;
    const running = apart.map(({ series, readings }, n) => {
      const by = (n - 2) * 6 * day;
      return {
        series: { ...series, hours: series.hours.map((hour) => ({ ...hour, at: instant(hour.at - by) })) },
        readings: readings.map((reading) => ({ ...reading, at: instant(reading.at - by) })),
      };
    });
    const sdOf = (events: readonly PastEvent[]) => learn(events, kind).byHour[4]!.sd;
    expect(sdOf(running)).toBeGreaterThan(sdOf(apart));
  });
});

const colder = (kind: PlaceOffset['kind'], sd: number): PlaceOffset => ({
  place: LAKE,
  kind,
  nights: 9,
  ran: kelvinDifference(-2),
  byHour: Array.from({ length: 24 }, () => ({ mean: -1, sd })),
});

describe('The error of the hours, with a place that is known', () => {
  const series = COLD_NIGHT;
  const errorOf = (placeOffset?: PlaceOffset) =>
    temperatureError(placeOffset === undefined ? { series, now: DUSK } : { series, now: DUSK, placeOffset });

  it('is moved by the offset and narrowed by what is no longer open', () => {
    const [plain, taught] = [errorOf(), errorOf(colder('official', 0.3))];
    const at = clock(22);
    expect(taught.mean(at) - plain.mean(at)).toBeCloseTo(-1, 12);
    expect(plain.sd(at) ** 2 - taught.sd(at) ** 2).toBeCloseTo(0.4 ** 2 - 0.3 ** 2, 2);
    expect(taught.lasting).toBeLessThan(plain.lasting);
  });

  it('is as it was where nothing is known, or only about the other kind of hours', () => {
    const plain = errorOf();
    for (const other of [errorOf(colder('rawModel', 0.5)), errorOf({ ...colder('official', 0.4) })])
      for (const at of [17, 21.3, 26].map(clock)) expect(other.sd(at)).toBeCloseTo(plain.sd(at), 9);
    expect(errorOf(colder('rawModel', 0.5)).mean(clock(20))).toBe(0);
  });

  it('keeps what wanders and half of what stays, however well the place is known', () => {
    const mild = seriesOf(new Array<number>(12).fill(5), { rawModel: true });
    const plain = temperatureError({ series: mild, now: DUSK });
    const known = temperatureError({ series: mild, now: DUSK, placeOffset: colder('rawModel', 0) });
    // 78 % wanders, and at least half of the 22 % that stay is the night's own.
    expect(known.sd(clock(20)) ** 2).toBeCloseTo(0.89 * plain.sd(clock(20)) ** 2, 9);
    expect(known.lasting).toBeCloseTo(0.11 / 0.89, 9);
  });

  it('makes a colder place richer, and a run no leaner than without it', () => {
    const request = requestOf();
    const [plain, taught] = [request, { ...request, placeOffset: colder('official', 0.3) }].map((each) =>
      expectOk(makePlan(each)),
    );
    for (const [i, run] of taught!.runs.entries()) {
      expect(run.air.temperature - plain!.runs[i]!.air.temperature).toBeCloseTo(-1, 6);
      expect(run.ideal[0]).toBeGreaterThan(plain!.runs[i]!.ideal[0]!);
    }
  });
});
