import type { PlanHour } from '@/lib/plan/types';
import type { UnitChoice } from '@/lib/units/choice';
import { formatNumber, formatPercent, formatPressure, formatTemperature } from '@/lib/units/format';
import { provenanceText } from './provenance';

/** Where an hour came from, as a word beside its number. */
const ORIGIN: Readonly<Record<PlanHour['origin'], string>> = {
  forecast: 'forecast',
  typed: 'typed',
  between: 'between',
  filled: 'filled',
};

/** What an hour said before readings corrected it, where it is another number now: "typed -3.5 °F". */
export type GivenWords = {
  readonly temperature: string | null;
  readonly pressure: string | null;
  readonly humidity: string | null;
  /** "typed; pressure from Open-Meteo, corrected by a reading". */
  readonly from: string;
};

type Hour = Pick<PlanHour, 'air' | 'given' | 'origin' | 'from'>;

/** Numbers are told apart as they are shown: a change too small to see is none. */
export function givenWords({ air, given, origin, from }: Hour, units: UnitChoice): GivenWords {
  const told = (now: string, before: string): string | null =>
    now === before ? null : `${ORIGIN[origin]} ${before}`;
  const temperature = told(
    formatTemperature(air.temperature, units),
    formatTemperature(given.temperature, units),
  );
  const pressure = told(formatPressure(air.pressure, units), formatPressure(given.pressure, units));
  const humidity = told(formatPercent(air.relativeHumidity, 0), formatPercent(given.relativeHumidity, 0));
  const corrected = [temperature, pressure, humidity].some((words) => words !== null);
  return {
    temperature,
    pressure,
    humidity,
    from: corrected ? `${provenanceText(from)}, corrected by a reading` : provenanceText(from),
  };
}

/** Sizes under this are bore marks or pilot-like numbers, where a tenth is worth showing. */
const SMALL = 200;

/** "418" or "418 408 418": the continuous ideal of each carburettor, once where all are the same. */
export function idealText(ideal: readonly number[]): string {
  const texts = ideal.map((size) => formatNumber(size, size < SMALL ? 1 : 0));
  return texts.every((text) => text === texts[0]) ? (texts[0] ?? '') : texts.join(' ');
}
