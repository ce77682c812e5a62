'use client';

import { Cautions } from '@/components/night/cautions';
import { Button } from '@/components/ui/button';
import { Notice } from '@/components/ui/notice';
import { Section } from '@/components/ui/section';
import { Way } from '@/components/ui/way';
import type { BoardAnswer, BoardMachineAnswer } from '@/lib/contract/board-answer';
import { type BoardDoorway, followHash } from '@/lib/share/board-address';
import { type Instant, instant } from '@/lib/time/instant';
import { type ClockZone, localClock } from '@/lib/time/zone';
import { BOARD_WORDS, jobAwayText, lateText, noBuzzSentence, stateSentence } from '@/lib/words/board-page';
import { STATE_WORD } from '@/lib/words/grades';
import styles from './board.module.css';
import type { BoardView } from './use-board';
import { useBuzz } from './use-buzz';

type MachineViewProps = {
  readonly door: BoardDoorway;
  readonly view: BoardView;
  readonly board: BoardAnswer;
  readonly machine: BoardMachineAnswer;
  readonly now: Instant;
  readonly zone: ClockZone;
};

/** The plate of one machine, as its board knows it. */
export function MachineView({ door, view, board, machine, now, zone }: MachineViewProps) {
  const { name, problem, dangers, lateByMinutes, risk } = machine;
  return (
    <>
      <h2>
        <bdi>{name}</bdi>
      </h2>
      {problem === null ? null : <Notice tone="caution" title={problem} />}
      <Question machine={machine} view={view} />
      {dangers.length === 0 ? null : <Notice tone="danger" title={dangers.join(' ')} />}
      {lateByMinutes === 0 ? null : (
        <p>
          <strong>{lateText(lateByMinutes)}</strong>
        </p>
      )}
      {problem === null ? <InNow machine={machine} /> : null}
      <Next machine={machine} view={view} now={now} />
      {risk === '' ? null : <p>{risk}</p>}
      <Buzz door={door} machine={machine} pushKey={board.pushKey} />
      <Runs machine={machine} zone={zone} />
      <Way href={`#${followHash(door)}`}>Another name</Way>
      <Cautions />
    </>
  );
}

type PartProps = { readonly machine: BoardMachineAnswer; readonly view: BoardView };

function Question({ machine: { id, question }, view }: PartProps) {
  if (question === null) return null;
  return (
    <section className={styles.block} aria-label="Not told">
      <h3 className={styles.lead}>{question.ask}</h3>
      <p>{question.meaning}</p>
      {question.answers.map(({ label, setting, at }, i) => (
        <Button
          key={label}
          kind={i === 0 ? 'primary' : 'plain'}
          size="large"
          wide
          disabled={view.busy}
          onClick={() => view.say({ machine: id, setting, at })}
        >
          {label}
        </Button>
      ))}
    </section>
  );
}

function InNow({ machine }: { readonly machine: BoardMachineAnswer }) {
  return (
    <section className={styles.block} aria-label="In now">
      <h3 className={styles.small}>{machine.known ? 'In now' : 'In now, as far as anybody said'}</h3>
      <p className={styles.figure}>{machine.inNow}</p>
      {machine.state === null ? null : <p className={styles.state}>{STATE_WORD[machine.state]}</p>}
      <p>{stateSentence(machine)}</p>
    </section>
  );
}

function Next({ machine: { id, job, question }, view, now }: PartProps & { readonly now: Instant }) {
  if (job === null) return null;
  const { windowStart, latestStart, done } = job;
  return (
    <section className={styles.block} aria-label="Next" aria-live="polite">
      <h3 className={styles.small}>Next</h3>
      <p className={styles.lead}>{job.lead}</p>
      {job.window === null || windowStart === null || latestStart === null ? null : (
        <p className={styles.when}>
          <span>{job.window}</span>{' '}
          {/* Counted down for the eye; the ear is told when the job changes, not every minute. */}
          <span aria-live="off">
            {jobAwayText(
              {
                windowStart: instant(Date.parse(windowStart)),
                latestStart: instant(Date.parse(latestStart)),
              },
              now,
            )}
          </span>
        </p>
      )}
      {job.lines.map((line) => (
        <p key={line}>{line}</p>
      ))}
      {done === null || question !== null ? null : (
        <Button
          kind="primary"
          size="decide"
          wide
          disabled={view.busy}
          onClick={() => view.say({ machine: id, setting: done.setting })}
        >
          {done.label}
        </Button>
      )}
    </section>
  );
}

type BuzzProps = {
  readonly door: BoardDoorway;
  readonly machine: BoardMachineAnswer;
  readonly pushKey: string | null;
};

function Buzz({ door, machine, pushKey }: BuzzProps) {
  const { buzzes, why, busy, buzz, stop } = useBuzz(door, machine.id, pushKey);
  if (buzzes)
    return (
      <section className={styles.block} aria-label="Buzz">
        <p>{BOARD_WORDS.buzzes}</p>
        <Button disabled={busy} onClick={() => void stop()}>
          {BOARD_WORDS.stop}
        </Button>
      </section>
    );
  const hopeless = why === 'no-https' || why === 'no-push' || why === 'home-screen';
  return (
    <section className={styles.block} aria-label="Buzz">
      {why === null ? null : <p className={styles.words}>{noBuzzSentence(why)}</p>}
      {hopeless ? null : (
        <Button size="large" disabled={busy} onClick={() => void buzz()}>
          {BOARD_WORDS.buzz}
        </Button>
      )}
    </section>
  );
}

const STATE_WORDS = {
  made: 'made',
  past: 'over',
  planned: 'to come',
  out: 'out',
  'beyond-hours': 'beyond the hours',
} as const;

function Runs({ machine, zone }: { readonly machine: BoardMachineAnswer; readonly zone: ClockZone }) {
  if (machine.runs.length === 0) return null;
  return (
    <Section title="Runs">
      <ul className={styles.rows}>
        {machine.runs.map(({ name, start, state, setting, grade }) => (
          <li key={`${name} ${start}`} className={styles.row}>
            <span>
              <strong>{localClock(instant(Date.parse(start)), zone)}</strong> <bdi>{name}</bdi>
            </span>
            <span>
              {setting}, {grade !== null && grade !== 'good' ? `${grade}, ` : ''}
              {STATE_WORDS[state]}
            </span>
          </li>
        ))}
      </ul>
    </Section>
  );
}
