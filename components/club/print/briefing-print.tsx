import { useMemo } from 'react';
import { Change } from '@/components/club/change';
import { ClubMatrix } from '@/components/club/matrix/matrix';
import type { ClubViewProps } from '@/components/club/view-props';
import { useClockZone } from '@/components/store/use-clock-zone';
import { airNow } from '@/lib/club/air-now';
import { shortIn } from '@/lib/club/boxes';
import type { Briefing } from '@/lib/club/briefing';
import { inGroups, ROWS_TOGETHER } from '@/lib/share/row-groups';
import type { Instant } from '@/lib/time/instant';
import type { ClockZone } from '@/lib/time/zone';
import { formatTemperature } from '@/lib/units/format';
import { cautionsFor, SWAP_CAUTION_LINE } from '@/lib/words/cautions';
import {
  borrowingSentences,
  type ClubNames,
  clubActWords,
  clubSentences,
  shortfallText,
} from '@/lib/words/club';
import { matrixOf, type ShownMatrix } from '@/lib/words/matrix-of';
import { eventLine, hoursLine, madeLine, racerFacts } from '@/lib/words/print-facts';
import { planClock } from '@/lib/words/runs';
import styles from './print.module.css';

type BriefingPrintProps = ClubViewProps & {
  readonly briefing: Briefing;
  readonly names: ClubNames;
  /** More hours than fit side by side go on in a second matrix. */
  readonly hoursAcross: number;
};

/** The whole briefing for the wall of a trailer without a screen. */
export function BriefingPrint({
  records,
  club,
  briefing,
  names,
  hoursAcross,
  now,
  preferences,
}: BriefingPrintProps) {
  const { event } = records.event.value;
  const zone = useClockZone(event.timezone);
  const blocks = useMemo(
    () => blocksOf(matrixOf(briefing.planned, zone), hoursAcross),
    [briefing, zone, hoursAcross],
  );
  const air = briefing.planned[0]?.plan.hours ?? [];
  const temperatureAt = (at: Instant): string => {
    const there = airNow(air, at);
    return there === null ? '' : formatTemperature(there.air.temperature, preferences, 0);
  };
  const factsOf = (id: string): string =>
    racerFacts(records, id)
      .map((fact) => ` · ${fact}`)
      .join('');
  return (
    <article className={styles.briefing} data-sheet="The briefing">
      <header>
        <h2 className={styles.title} data-sheet-title>
          {eventLine(event)}
        </h2>
        {clubSentences(briefing, names, zone).map((sentence) => (
          <p key={sentence} className={styles.call}>
            {sentence}
          </p>
        ))}
      </header>
      <h3>What to do, by the clock</h3>
      <p>{[SWAP_CAUTION_LINE, ...cautionsFor('indoors')].join(' ')}</p>
      <PrintedActs briefing={briefing} names={names} zone={zone} factsOf={factsOf} />
      {blocks.map((block) => (
        <ClubMatrix
          key={block.hours[0]?.at}
          matrix={block}
          names={names}
          caption="What is in each engine in each hour"
          atOnce
          under={temperatureAt}
        />
      ))}
      <PrintedBorrowing briefing={briefing} names={names} />
      <footer>
        <p>{madeLine(now, zone)}</p>
        {club.night === null ? null : <p>{hoursLine(club.night.series, zone)}</p>}
      </footer>
    </article>
  );
}

function blocksOf({ hours, rows }: ShownMatrix, across: number): readonly ShownMatrix[] {
  return inGroups([...hours.keys()], across).map((block) => {
    const [from, to] = [block[0] ?? 0, (block.at(-1) ?? 0) + 1];
    return {
      hours: hours.slice(from, to),
      rows: rows.map((row) => ({ ...row, cells: row.cells.slice(from, to) })),
    };
  });
}

type PartProps = { readonly briefing: Briefing; readonly names: ClubNames };

type PrintedActsProps = PartProps & {
  readonly zone: ClockZone;
  /** Sled and class, each after a dot; '' where the name says it all. */
  readonly factsOf: (racerId: string) => string;
};

function PrintedActs({ briefing, names, zone, factsOf }: PrintedActsProps) {
  const plans = new Map(briefing.planned.map(({ racer, plan }) => [racer.id, plan]));
  if (briefing.acts.length === 0) return <p>Nothing to swap.</p>;
  return (
    <table className={styles.acts}>
      <thead>
        <tr>
          <th scope="col">Done</th>
          <th scope="col">When</th>
          <th scope="col">Racer</th>
          <th scope="col">Change</th>
          <th scope="col">Between</th>
        </tr>
      </thead>
      {inGroups(briefing.acts, ROWS_TOGETHER).map((group) => (
        <tbody key={`${group[0]?.racerId} ${group[0]?.at}`}>
          {group.map((act) => {
            const plan = plans.get(act.racerId);
            if (plan === undefined) return null;
            const words = clubActWords(act, plan, planClock(plan, zone));
            return (
              <tr key={`${act.racerId} ${act.swap.beforeRun}`}>
                <td>
                  <span className={styles.tick} />
                </td>
                <td className={styles.when}>{words.window}</td>
                <th scope="row">
                  {names.racer(act.racerId)}
                  <span className={styles.facts}>{factsOf(act.racerId)}</span>
                </th>
                <td className={styles.change}>
                  <Change from={act.swap.from} to={act.swap.to} />
                </td>
                <td>{words.where}</td>
              </tr>
            );
          })}
        </tbody>
      ))}
    </table>
  );
}

function PrintedBorrowing({ briefing, names }: PartProps) {
  const plans = new Map(briefing.planned.map(({ racer, plan }) => [racer.id, plan]));
  const short = briefing.boxes.filter((box) => box.owners.length > 1 && shortIn(box).size > 0);
  if (briefing.borrowings.length + short.length === 0) return null;
  return (
    <section className={styles.whole}>
      <h3>Borrowing</h3>
      {briefing.borrowings.map((borrowing) => {
        const { racerId, side } = borrowing.want;
        const plan = plans.get(racerId);
        return plan === undefined ? null : (
          <p key={`${racerId} ${side}`}>
            <span className={styles.tick} /> <b>{names.racer(racerId)}</b>.{' '}
            {borrowingSentences(borrowing, plan, names).join(' ')}
          </p>
        );
      })}
      {short.map((box) => (
        <p key={box.boxId}>
          <b>{names.box(box.boxId)}</b> is asked for too often: {shortfallText(shortIn(box))}.
        </p>
      ))}
    </section>
  );
}
