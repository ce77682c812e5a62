import { Change } from '@/components/club/change';
import { useClockZone } from '@/components/store/use-clock-zone';
import type { Briefing } from '@/lib/club/briefing';
import type { PlannedRacer } from '@/lib/club/racer';
import type { EventJson } from '@/lib/contract/event';
import type { HourSeries } from '@/lib/hours/series';
import type { RunPlan } from '@/lib/plan/types';
import type { Instant } from '@/lib/time/instant';
import type { UnitChoice } from '@/lib/units/choice';
import { formatTemperature } from '@/lib/units/format';
import { callSentences } from '@/lib/words/call';
import { SWAP_CAUTION_LINE } from '@/lib/words/cautions';
import { borrowingSentences, type ClubNames, clubActWords } from '@/lib/words/club';
import { fractionCount } from '@/lib/words/counts';
import { GRADE_WORD, RUN_STATE_WORD } from '@/lib/words/grades';
import { eventLine, hoursLine, madeLine } from '@/lib/words/print-facts';
import { planClock, runName } from '@/lib/words/runs';
import { settingText } from '@/lib/words/settings';
import { type Clock, clockText } from '@/lib/words/times';
import styles from './racer-sheet.module.css';

type RacerSheetProps = {
  readonly planned: PlannedRacer;
  readonly briefing: Briefing;
  readonly names: ClubNames;
  readonly event: EventJson;
  /** Sled and class. */
  readonly facts: readonly string[];
  readonly now: Instant;
  readonly units: UnitChoice;
  /** What its plan rests on; null where nobody gave hours. */
  readonly series: HourSeries | null;
};

/** What one racer takes along: the call, the acts with a box to tick, and what every run is made on. */
export function RacerSheet(props: RacerSheetProps) {
  const { planned, briefing, names, event, facts, now, units, series } = props;
  const { racer, plan, standing } = planned;
  const name = names.racer(racer.id);
  const zone = useClockZone(event.timezone);
  const clock = planClock(plan, zone);
  const acts = briefing.acts.filter(({ racerId }) => racerId === racer.id);
  const loans = briefing.borrowings.filter(({ want }) => want.racerId === racer.id);
  return (
    <>
      <header className={styles.head}>
        <h2 className={styles.title}>{name}</h2>
        {facts.length === 0 ? null : <p className={styles.facts}>{facts.join(' · ')}</p>}
        <p>{eventLine(event)}</p>
      </header>
      <p className={styles.call}>
        {callSentences(standing, { zone, units, now, ride: event.ride }).join(' ')}
      </p>
      {acts.length === 0 ? null : (
        <ul className={styles.todo}>
          {acts.map((act) => {
            const words = clubActWords(act, plan, clock);
            return (
              <li key={act.swap.beforeRun}>
                <span className={styles.tick} />
                <span>
                  <span className={styles.figures}>
                    <Change from={act.swap.from} to={act.swap.to} />
                  </span>{' '}
                  {/* Before the first run the time to begin by says it all. */}
                  {act.beforeFirst ? null : <b>{words.window}</b>}
                  <span className={styles.detail}>
                    {words.where}. {words.begin}
                  </span>
                </span>
              </li>
            );
          })}
        </ul>
      )}
      {loans.map((borrowing) => (
        <p key={borrowing.want.side}>{borrowingSentences(borrowing, plan, names).join(' ')}</p>
      ))}
      <RunsTable planned={planned} clock={clock} now={now} units={units} />
      <footer className={styles.foot}>
        <p>{SWAP_CAUTION_LINE}</p>
        <p>{madeLine(now, zone)}</p>
        {series === null ? null : <p>{hoursLine(series, zone)}</p>}
      </footer>
    </>
  );
}

type RunsTableProps = Pick<RacerSheetProps, 'planned' | 'now' | 'units'> & { readonly clock: Clock };

/** A run's name of at most so many letters stays on one line; a longer one may take two. */
const SHORT_NAME = 12;

/** Every run with a box to tick, its air, its jets and how many forecasts turn it lean. */
function RunsTable({ planned: { plan }, clock, now, units }: RunsTableProps) {
  return (
    <table className={styles.runs}>
      <thead>
        <tr>
          <th scope="col">Run</th>
          <th scope="col">At</th>
          <th scope="col">°{units.temperature}</th>
          <th scope="col">Jets</th>
          <th scope="col">Lean</th>
        </tr>
      </thead>
      <tbody>
        {plan.runs.map((run) => (
          <tr key={run.run}>
            <th scope="row" className={runName(plan, run.run).length > SHORT_NAME ? undefined : styles.clock}>
              <span className={styles.tick} /> {runName(plan, run.run)}
            </th>
            <td className={styles.clock}>{clockText(plan.sortedRuns[run.run]?.start ?? now, clock)}</td>
            <td className={styles.clock}>{run.state === 'beyond-hours' ? '' : degrees(run, units)}</td>
            <td className={styles.figures}>
              {run.state === 'beyond-hours' || run.state === 'out'
                ? RUN_STATE_WORD[run.state]
                : settingText(run.setting)}
            </td>
            <td>{leanIn(run)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** The unit stands at the head of the column. */
const degrees = ({ air }: RunPlan, units: UnitChoice): string =>
  formatTemperature(air.temperature, units, 0).replace(/\s*°\w$/, '');

/** "9/64 LEAN": the word stands where a limit is passed, so that grey paper tells it too. */
function leanIn({ state, leanCount, grade }: RunPlan): string {
  if (state !== 'planned') return '';
  return `${fractionCount(leanCount)}${grade === 'good' ? '' : ` ${GRADE_WORD[grade].toUpperCase()}`}`;
}
