import { Change } from '@/components/club/change';
import { useClockZone } from '@/components/store/use-clock-zone';
import type { Briefing } from '@/lib/club/briefing';
import type { PlannedRacer } from '@/lib/club/racer';
import type { EventJson } from '@/lib/contract/event';
import type { HourSeries } from '@/lib/hours/series';
import type { RunPlan } from '@/lib/plan/types';
import type { Instant } from '@/lib/time/instant';
import type { UnitChoice } from '@/lib/units/choice';
import { callSentences } from '@/lib/words/call';
import { SWAP_CAUTION_LINE } from '@/lib/words/cautions';
import { borrowingSentences, type ClubNames, clubActWords } from '@/lib/words/club';
import { shortCount } from '@/lib/words/counts';
import { GRADE_WORD, RUN_STATE_WORD } from '@/lib/words/grades';
import { eventLine, hoursLine, madeLine } from '@/lib/words/print-facts';
import { planClock, runName } from '@/lib/words/runs';
import { settingText } from '@/lib/words/settings';
import { type Clock, clockText } from '@/lib/words/times';
import styles from './print.module.css';

type RacerSheetProps = {
  readonly planned: PlannedRacer;
  readonly briefing: Briefing;
  readonly names: ClubNames;
  readonly event: EventJson;
  readonly now: Instant;
  readonly units: UnitChoice;
  /** What its plan rests on; null where nobody gave hours. */
  readonly series: HourSeries | null;
};

/** What one racer takes along: the call, the acts with a box to tick, and what every run is made on. */
export function RacerSheet({ planned, briefing, names, event, now, units, series }: RacerSheetProps) {
  const { racer, plan, standing } = planned;
  const name = names.racer(racer.id);
  const zone = useClockZone(event.timezone);
  const clock = planClock(plan, zone);
  const acts = briefing.acts.filter(({ racerId }) => racerId === racer.id);
  const loans = briefing.borrowings.filter(({ want }) => want.racerId === racer.id);
  return (
    <article className={styles.sheet} data-sheet={name}>
      <header>
        <h2 className={styles.title}>{name}</h2>
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
                  <b>{words.window}</b> <Change from={act.swap.from} to={act.swap.to} />
                  <br />
                  {words.where}. {words.begin}
                </span>
              </li>
            );
          })}
        </ul>
      )}
      {loans.map((borrowing) => (
        <p key={borrowing.want.side}>{borrowingSentences(borrowing, plan, names).join(' ')}</p>
      ))}
      <RunsTable planned={planned} clock={clock} now={now} />
      <footer>
        <p>{SWAP_CAUTION_LINE}</p>
        <p>{madeLine(now, zone)}</p>
        {series === null ? null : <p>{hoursLine(series, zone)}</p>}
      </footer>
    </article>
  );
}

type RunsTableProps = Pick<RacerSheetProps, 'planned' | 'now'> & { readonly clock: Clock };

/** Every run with a box to tick, its jets and how many forecasts turn it lean. */
function RunsTable({ planned: { plan }, clock, now }: RunsTableProps) {
  return (
    <table className={styles.runs}>
      <thead>
        <tr>
          <th scope="col">Made</th>
          <th scope="col">Run</th>
          <th scope="col">Starts</th>
          <th scope="col">Jets</th>
          <th scope="col">Forecasts lean</th>
        </tr>
      </thead>
      <tbody>
        {plan.runs.map((run) => (
          <tr key={run.run}>
            <td>
              <span className={styles.tick} />
            </td>
            <th scope="row">{runName(plan, run.run)}</th>
            <td>{clockText(plan.sortedRuns[run.run]?.start ?? now, clock)}</td>
            <td>
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

/** "9 of 64 LEAN": the word stands where a limit is passed, so that grey paper tells it too. */
function leanIn({ state, leanCount, grade }: RunPlan): string {
  if (state !== 'planned') return '';
  return `${shortCount(leanCount)}${grade === 'good' ? '' : ` ${GRADE_WORD[grade].toUpperCase()}`}`;
}
