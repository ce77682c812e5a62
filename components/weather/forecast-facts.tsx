import { classNames } from '@/components/ui/class-names';
import { WholeNames } from '@/components/ui/whole-names';
import { instantFromJson } from '@/lib/contract/event-from-json';
import { forecastSeries } from '@/lib/contract/forecast-series';
import { dataAge, hoursProvenance } from '@/lib/hours/provenance';
import type { SeriesSource } from '@/lib/hours/series';
import type { ForecastRecord } from '@/lib/store/records';
import type { Instant } from '@/lib/time/instant';
import { formatElevation, formatTemperatureStep } from '@/lib/units/format';
import { kelvinDifference, metre } from '@/lib/units/quantity';
import { countdown } from '@/lib/words/countdown';
import { filledSentence, missingSentence } from '@/lib/words/missing-hours';
import { AGE_WORD, pressureSentence } from '@/lib/words/provenance';
import { type Clock, clockText, windowText } from '@/lib/words/times';
import type { Voice } from '@/lib/words/voice';
import { contradictionSentence, triedSentence } from '@/lib/words/weather-problems';
import styles from './weather.module.css';

type ForecastFactsProps = {
  readonly record: ForecastRecord;
  readonly now: Instant;
  readonly voice: Voice;
  /** The start of the first run: from there on a bare clock time is understood. */
  readonly from: Instant | null;
};

/** What a kept forecast is: whose, how old, for what height, what is missing in it. */
export function ForecastFacts({ record, now, voice, from }: ForecastFactsProps) {
  const { forecast } = record;
  const series = forecastSeries(forecast);
  const told = hoursProvenance(series);
  const age = dataAge(told, now);
  const clock: Clock = from === null ? { zone: voice.zone } : { zone: voice.zone, from };
  const filled = series.hours.filter(({ origin }) => origin === 'filled').map(({ at }) => at);
  const notes = [
    forecast.freshness === 'stale'
      ? 'No weather service answered when this was asked for: it is the last good copy.'
      : '',
    triedSentence((forecast.tries ?? []).map(({ source, problem: { code } }) => ({ source, code }))),
    contradictionSentence(
      (forecast.leftOut ?? []).map(({ time, code }) => ({ at: instantFromJson(time), code })),
      { service: forecast.name, clock },
    ),
    missingSentence((forecast.missing ?? []).map(instantFromJson), clock),
    filledSentence(filled, clock),
    pressureSentence(told),
    spreadSentence(
      series.hours.map(({ spread }) => spread).filter((spread) => spread !== null),
      voice,
    ),
  ].filter((note) => note !== '');
  return (
    <div className={styles.facts}>
      <p>
        <span className={classNames(styles.age, styles[age])}>{AGE_WORD[age]}</span>
        <WholeNames text={sourceSentence(series.source, { now, clock })} />{' '}
        {hoursSentence(series.hours, clock)} For {formatElevation(metre(forecast.elevationM), voice.units)}.
      </p>
      {notes.map((note) => (
        <p key={note}>
          <WholeNames text={note} />
        </p>
      ))}
      <Credit source={series.source} />
    </div>
  );
}

type Told = { readonly now: Instant; readonly clock: Clock };

/** "Open-Meteo, made 18:00 (2 h ago), asked for 5 min ago." */
function sourceSentence({ name, issuedAt, fetchedAt }: SeriesSource, { now, clock }: Told): string {
  const asked = `asked for ${ago(now, fetchedAt ?? now)}`;
  if (issuedAt === null) return `${name}, ${asked}; it does not say when it was made.`;
  return `${name}, made ${clockText(issuedAt, clock)} (${ago(now, issuedAt)}), ${asked}.`;
}

const ago = (now: Instant, at: Instant): string => (at >= now ? 'just now' : countdown(now, at));

function hoursSentence(hours: readonly { readonly at: Instant }[], clock: Clock): string {
  const [first, last] = [hours[0], hours.at(-1)];
  if (first === undefined || last === undefined) return 'It has no hours.';
  return `Hours from ${windowText(first.at, last.at, clock)}.`;
}

function spreadSentence(spreads: readonly number[], { units }: Voice): string {
  if (spreads.length === 0)
    return 'How sure: by the usual error of forecasts, as it comes without an ensemble.';
  const mean = spreads.reduce((sum, spread) => sum + spread, 0) / spreads.length;
  return `How sure: its ensemble spreads by ±${formatTemperatureStep(kelvinDifference(mean), units)} on average, widened for the air near the ground.`;
}

function Credit({ source: { attribution, attributionUrl } }: { readonly source: SeriesSource }) {
  if (attribution === '') return null;
  return (
    <p className={styles.credit}>
      {attributionUrl === null ? (
        attribution
      ) : (
        <a href={attributionUrl} rel="noreferrer">
          {attribution}
        </a>
      )}
    </p>
  );
}
