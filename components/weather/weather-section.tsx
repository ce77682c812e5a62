'use client';

import { useClockZone } from '@/components/store/use-clock-zone';
import { usePreferences } from '@/components/store/use-preferences';
import { useTable } from '@/components/store/use-table';
import { Button } from '@/components/ui/button';
import { Notice } from '@/components/ui/notice';
import { Section } from '@/components/ui/section';
import { turnBack, useHash } from '@/components/ui/use-hash';
import { WholeNames } from '@/components/ui/whole-names';
import { stretchOfRuns } from '@/lib/night/forecast-question';
import type { EventRecord, Stored } from '@/lib/store/records';
import type { Instant } from '@/lib/time/instant';
import { localClock } from '@/lib/time/zone';
import { askProblemWords } from '@/lib/words/ask-problem';
import { type ForecastFault, forecastFaultText } from '@/lib/words/forecast-fault';
import { ForecastFacts } from './forecast-facts';
import { PlaceDialog } from './place-dialog';
import { TypedHoursNote } from './typed-hours-note';
import type { ForecastState } from './use-forecast';
import styles from './weather.module.css';

type WeatherSectionProps = {
  readonly event: Stored<EventRecord>;
  readonly now: Instant;
  readonly forecast: ForecastState;
  /** Whether the way to typed hours stands here; where it is the one way to a plan it stands above. */
  readonly typing?: boolean;
};

const close = () => turnBack('forecast', 'weather');

/** The weather a night rests on: whose forecast, how old, and the ways to get another. */
export function WeatherSection({ event, now, forecast: state, typing = true }: WeatherSectionProps) {
  const { preferences } = usePreferences();
  const { temperature, pressure, elevation } = preferences;
  const units = { temperature, pressure, elevation };
  const zone = useClockZone(event.value.event.timezone);
  const hash = useHash();
  const forecasts = useTable('forecasts');
  const record = forecasts?.find(({ id }) => id === event.value.forecastId)?.value ?? null;
  const follows = state.status !== 'off';
  // Where the server asks to be left alone until then, the button says the same as its words.
  const wait = state.askFrom !== null && now < state.askFrom ? localClock(state.askFrom, zone) : null;
  return (
    <Section title="Weather" id="weather">
      {record === null ? (
        // Why none came is told below, and once.
        state.problem === null && <NoForecast follows={follows} />
      ) : (
        <ForecastFacts
          record={record}
          now={now}
          voice={{ zone, units }}
          from={stretchOfRuns(event.value)?.start ?? null}
        />
      )}
      <TypedHoursNote event={event} hasForecast={record !== null} />
      <AskingWords state={state} hasForecast={record !== null} />
      <div className={styles.acts}>
        {state.status === 'following' ? (
          <Button disabled={state.asking || wait !== null} onClick={state.askNow}>
            {state.asking ? 'Asking…' : wait === null ? 'Ask again now' : `Ask again at ${wait}`}
          </Button>
        ) : null}
        <a className={styles.link} href="#forecast">
          {follows ? 'Another place' : 'Get the forecast'}
        </a>
        {typing ? (
          <a className={styles.link} href="#hours">
            Type hours by hand
          </a>
        ) : null}
      </div>
      {hash === 'forecast' ? (
        <PlaceDialog key={event.id} stored={event} units={units} onClose={close} />
      ) : null}
    </Section>
  );
}

function NoForecast({ follows }: { readonly follows: boolean }) {
  return (
    <p className={styles.facts}>
      <span>
        <span className={`${styles.age} ${styles.none}`}>none</span>
        {follows
          ? 'No forecast has come yet for this place.'
          : 'This night follows no forecast. Give its place to get one, or go by typed hours.'}
      </span>
    </p>
  );
}

type AskingWordsProps = { readonly state: ForecastState; readonly hasForecast: boolean };

/** What came of asking: nothing is said where all went well. */
function AskingWords({ state: { status, asking, problem }, hasForecast }: AskingWordsProps) {
  if (status === 'over') return <p>All runs are past; the forecast is not asked for any more.</p>;
  if (problem === null) return <output>{asking && !hasForecast ? 'Asking for the forecast…' : ''}</output>;
  return (
    <Notice
      tone="caution"
      title={`${hasForecast ? 'No newer forecast' : 'No forecast came'}: ${forecastFaultText(problem)}.`}
    >
      <p className={styles.advice}>
        <WholeNames text={renewProblemWords(problem, hasForecast)} />
      </p>
    </Notice>
  );
}

function renewProblemWords(problem: ForecastFault, hasForecast: boolean): string {
  const instead = hasForecast
    ? 'The plan goes by the last forecast; it is asked for again by itself.'
    : 'Type the hours by hand, or stay on this page: it is asked for again by itself.';
  switch (problem.code) {
    case 'no-place':
      return 'The night has no place to ask for. Give one under “Get the forecast”.';
    case 'not-kept':
      return `It came, but could not be kept in this browser. ${instead}`;
    case 'refused':
      return hasForecast ? `${problem.detail} ${instead}` : problem.detail;
    default:
      return askProblemWords(problem, instead);
  }
}
