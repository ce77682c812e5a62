import { HOUR_MS, type Instant } from '@/lib/time/instant';
import type { Hour, HourOrigin, HourSeries, SeriesSource } from './series';

/** Who told a number: a service by its short name, or the person who typed it (null). */
export type Teller = { readonly origin: HourOrigin; readonly by: string | null };

/** Where the numbers of one hour come from. */
export type Provenance = {
  readonly temperature: Teller;
  /** 'standard': nobody told it, the standard atmosphere stands in. */
  readonly pressure: Teller | 'standard';
  /** When the forecast in it was made, or fetched where the service does not say; null where none of it is a forecast. */
  readonly madeAt: Instant | null;
};

const isForecast = (origin: HourOrigin): boolean => origin === 'forecast' || origin === 'filled';

/** Where an hour's pressure came from: from its temperature's teller where nothing else is said. */
export function pressureOriginOf(hour: Pick<Hour, 'origin' | 'pressureOrigin'>): HourOrigin {
  return hour.pressureOrigin ?? hour.origin;
}

/** When what a source tells was made. */
export function madeAtOf({ issuedAt, fetchedAt }: SeriesSource): Instant | null {
  return issuedAt ?? fetchedAt;
}

export function provenanceOf(hour: Hour, source: SeriesSource): Provenance {
  const { origin } = hour;
  const pressureOrigin = pressureOriginOf(hour);
  const standard = hour.pressureFrom === 'standard';
  const tellerOf = (told: HourOrigin, by: string | undefined): Teller => ({
    origin: told,
    by: isForecast(told) ? (by ?? source.name) : null,
  });
  const told = isForecast(origin) || (!standard && isForecast(pressureOrigin));
  return {
    temperature: tellerOf(origin, hour.temperatureBy),
    pressure: standard ? 'standard' : tellerOf(pressureOrigin, hour.pressureBy),
    madeAt: told ? madeAtOf(source) : null,
  };
}

/** Hours in a row that a person typed, with those between them. */
export type TypedStretch = { readonly from: Instant; readonly to: Instant };

/** Where the numbers of all hours come from, each teller once, in the order in which it first speaks. */
export type HoursProvenance = {
  /** Services only. */
  readonly temperatureBy: readonly string[];
  readonly typed: readonly TypedStretch[];
  readonly pressureBy: readonly string[];
  readonly pressureTyped: boolean;
  readonly pressureStandard: boolean;
  /** Of the forecast among them; null where there is none. */
  readonly madeAt: Instant | null;
};

/** The whole of a series, for the one line beside a plan. */
export function hoursProvenance({ hours, source }: HourSeries): HoursProvenance {
  const each = hours.map((hour) => provenanceOf(hour, source));
  const pressures = each.map(({ pressure }) => pressure);
  return {
    temperatureBy: named(each.map(({ temperature }) => temperature)),
    typed: typedStretches(hours),
    pressureBy: named(pressures.filter((pressure) => pressure !== 'standard')),
    pressureTyped: pressures.some((pressure) => pressure !== 'standard' && pressure.by === null),
    pressureStandard: pressures.includes('standard'),
    madeAt: each.find(({ madeAt }) => madeAt !== null)?.madeAt ?? null,
  };
}

function named(tellers: readonly Teller[]): readonly string[] {
  return [...new Set(tellers.flatMap(({ by }) => (by === null ? [] : [by])))];
}

function typedStretches(hours: readonly Hour[]): readonly TypedStretch[] {
  const stretches: TypedStretch[] = [];
  for (const [i, { at, origin }] of hours.entries()) {
    if (isForecast(origin)) continue;
    const before = hours[i - 1];
    const last = stretches.at(-1);
    if (last !== undefined && before !== undefined && !isForecast(before.origin))
      stretches[stretches.length - 1] = { ...last, to: at };
    else stretches.push({ from: at, to: at });
  }
  return stretches;
}

/** 'part typed': a person's hours stand before a forecast's, which has an age of its own. */
export type DataAge = 'fresh' | 'ageing' | 'stale' | 'typed' | 'part typed';

/** Forecast services renew their runs every 1 to 6 hours; beyond 12 a forecast is one or more runs behind. */
const STILL_FRESH_MS = 3 * HOUR_MS;
const STALE_MS = 12 * HOUR_MS;

/** How old hours are, as one word; typed hours have no age, and a forecast behind them lends them none. */
export function dataAge({ typed, temperatureBy, madeAt }: HoursProvenance, now: Instant): DataAge {
  if (typed.length > 0) return temperatureBy.length > 0 ? 'part typed' : 'typed';
  return madeAt === null ? 'typed' : forecastAge(madeAt, now);
}

/** How old a forecast is. */
export function forecastAge(madeAt: Instant, now: Instant): 'fresh' | 'ageing' | 'stale' {
  const age = now - madeAt;
  if (age <= STILL_FRESH_MS) return 'fresh';
  return age <= STALE_MS ? 'ageing' : 'stale';
}
