import {
  type DataAge,
  dataAge,
  forecastAge,
  type HoursProvenance,
  type Provenance,
  type Teller,
  type TypedStretch,
} from '@/lib/hours/provenance';
import type { Instant } from '@/lib/time/instant';
import { countdown } from './countdown';
import { capital, listing } from './listing';
import { type Clock, dateClockText, windowText } from './times';
import { serviceName } from './weather-problems';

/** Where a number came from, as a word beside it. */
function tellerText({ origin, by }: Teller): string {
  switch (origin) {
    case 'typed':
      return 'typed';
    case 'between':
      return 'between typed hours';
    case 'forecast':
      return by === null ? 'forecast' : `forecast, ${serviceName(by)}`;
    case 'filled':
      return by === null ? 'filled' : `filled, ${serviceName(by)}`;
  }
}

const ESTIMATE = 'pressure an estimate (standard atmosphere)';

/** One hour: "forecast, Open-Meteo", "typed; pressure from Open-Meteo", "typed; pressure an estimate (standard atmosphere)". */
export function provenanceText({ temperature, pressure }: Provenance): string {
  const told = tellerText(temperature);
  if (pressure === 'standard') return `${told}; ${ESTIMATE}`;
  if (
    pressure.by === temperature.by ||
    (pressure.by !== null &&
      temperature.by !== null &&
      serviceName(pressure.by) === serviceName(temperature.by))
  )
    return told;
  return pressure.by === null
    ? `${told}; pressure typed`
    : `${told}; pressure from ${serviceName(pressure.by)}`;
}

/** "Hours from Open-Meteo, 2 h ago; pressure an estimate (standard atmosphere)." */
export function hoursSentence(told: HoursProvenance, now: Instant, clock: Clock): string {
  return sentence(told, clock, (madeAt) => countdown(now, madeAt >= now ? now : madeAt));
}

/** The same for paper, which stands still: "Hours from Open-Meteo, 2027-01-16 18:00." */
export function hoursSentenceOnPaper(told: HoursProvenance, clock: Clock): string {
  return sentence(told, clock, (madeAt) => dateClockText(madeAt, clock.zone));
}

/** @param when what is said of the moment a forecast was made */
function sentence(told: HoursProvenance, clock: Clock, when: (madeAt: Instant) => string): string {
  const { madeAt } = told;
  const made = madeAt === null ? '' : `, ${when(madeAt)}`;
  const pressure = pressurePart(told);
  const beside = pressure === null ? '' : `; ${pressure}`;
  if (told.temperatureBy.length === 0)
    return pressure === null
      ? 'Hours entered by hand; no forecast behind them.'
      : `Temperatures entered by hand${beside}${told.pressureBy.length > 0 ? made : ''}.`;
  const services = listing(serviceNames(told.temperatureBy));
  return told.typed.length === 0
    ? `Hours from ${services}${made}${beside}.`
    : `Typed ${stretchesText(told.typed, clock)}, the other hours from ${services}${made}${beside}.`;
}

/** Each service once, also where one hour knows it by another of its names. */
function serviceNames(by: readonly string[]): readonly string[] {
  return [...new Set(by.map(serviceName))];
}

function stretchesText(typed: readonly TypedStretch[], clock: Clock): string {
  return listing(typed.map(({ from, to }) => windowText(from, to, clock)));
}

/** Whose the pressure is; null where it is that of whoever told the temperatures. */
function pressurePart(told: HoursProvenance): string | null {
  const { pressureBy, pressureTyped, pressureStandard, temperatureBy, typed } = told;
  if (pressureStandard && pressureBy.length === 0 && !pressureTyped) return ESTIMATE;
  const same =
    !pressureStandard &&
    pressureTyped === typed.length > 0 &&
    serviceNames(pressureBy).join() === serviceNames(temperatureBy).join();
  if (same) return null;
  const tellers = [
    ...(pressureTyped ? ['typed'] : []),
    ...serviceNames(pressureBy).map((name) => `from ${name}`),
    ...(pressureStandard ? ['in part an estimate (standard atmosphere)'] : []),
  ];
  return `pressure ${listing(tellers)}`;
}

/** What a calendar or a table says of the pressure, where it is not that of the forecast it names; '' where it is. */
export function pressureSentence(told: HoursProvenance): string {
  const pressure = pressurePart(told);
  return pressure === null ? '' : `${capital(pressure)}.`;
}

/** How old hours are, in words that are read once. */
export const AGE_WORD: Readonly<Record<DataAge, string>> = {
  fresh: 'fresh',
  ageing: 'old',
  stale: 'too old',
  typed: 'typed',
  'part typed': 'part typed',
};

/** "fresh", "typed", or for typed hours before a forecast "part typed, forecast old". */
export function ageText(told: HoursProvenance, now: Instant): string {
  const age = dataAge(told, now);
  return age !== 'part typed' || told.madeAt === null
    ? AGE_WORD[age]
    : `${AGE_WORD[age]}, forecast ${AGE_WORD[forecastAge(told.madeAt, now)]}`;
}

/** The same with the time since the forecast was made: "old: 3 h 23 min"; within its first minute "fresh" alone. */
export function ageSinceText(told: HoursProvenance, now: Instant): string {
  const { madeAt } = told;
  const since = madeAt === null || madeAt >= now ? 'now' : countdown(now, madeAt);
  return since === 'now' ? ageText(told, now) : `${ageText(told, now)}: ${since.replace(/ ago$/, '')}`;
}
