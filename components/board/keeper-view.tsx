'use client';

import { PhoneCode } from '@/components/share/phone-code';
import { PhoneLink } from '@/components/share/phone-link';
import { Button } from '@/components/ui/button';
import { Notice } from '@/components/ui/notice';
import { Section } from '@/components/ui/section';
import { ButtonRow } from '@/components/ui/stack';
import type { BoardAnswer, BoardMachineAnswer } from '@/lib/contract/board-answer';
import { type BoardDoorway, followHash } from '@/lib/share/board-address';
import { type Instant, instant } from '@/lib/time/instant';
import { type ClockZone, localClock } from '@/lib/time/zone';
import { BOARD_WORDS, boardCodeTitle, lateText, phonesText } from '@/lib/words/board-page';
import { isolated } from '@/lib/words/isolated';
import { plainName } from '@/lib/words/plain-name';
import styles from './board.module.css';
import { RunningLate } from './running-late';
import type { BoardView } from './use-board';

type KeeperViewProps = {
  readonly door: BoardDoorway;
  readonly view: BoardView;
  readonly board: BoardAnswer;
  readonly keeper: NonNullable<BoardAnswer['keeper']>;
  readonly now: Instant;
  readonly zone: ClockZone;
};

/** What whoever posted a board wants to know: who follows, who has not confirmed, what was told. */
export function KeeperView({ door, view, board, keeper, now, zone }: KeeperViewProps) {
  const names = new Map(board.machines.map(({ id, name }) => [id, name]));
  const open = board.machines.filter(({ question }) => question !== null);
  return (
    <>
      {open.length === 0 ? null : (
        <Notice
          tone="caution"
          title={`Not confirmed: ${open.map(({ name }) => isolated(plainName(name))).join(', ')}.`}
        />
      )}
      <Section title="Machines">
        <ul className={styles.rows}>
          {board.machines.map((machine) => (
            <MachineRow
              key={machine.id}
              machine={machine}
              phones={keeper.followers.find((each) => each.machine === machine.id)?.phones ?? 0}
              href={`#${followHash(door, machine.id)}`}
            />
          ))}
        </ul>
      </Section>
      <RunningLate boardId={door.id} now={now} />
      <Section title={BOARD_WORDS.told}>
        {keeper.told.length === 0 ? <p>{BOARD_WORDS.nothingTold}</p> : null}
        <ul className={styles.rows}>
          {keeper.told.map(({ at, machine, title, body, phones, reached }) => (
            <li key={`${machine} ${at} ${title}`} className={styles.row}>
              <span>
                <strong>{localClock(instant(Date.parse(at)), zone)}</strong> {title}
              </span>
              <span>{body}</span>
              <span className={styles.small}>
                <bdi>{names.get(machine) ?? machine}</bdi>:{' '}
                {phones === 0 ? 'no phone follows' : `${reached} of ${phonesText(phones)}`}
              </span>
            </li>
          ))}
        </ul>
      </Section>
      <Section title="For your racers">
        <PhoneCode board={door} title={boardCodeTitle(board.event.name)} />
        <PhoneLink board={door} night={board.event.name} />
      </Section>
      <ButtonRow>
        <Button disabled={view.busy} onClick={view.takeDown}>
          Take it down
        </Button>
      </ButtonRow>
    </>
  );
}

type RowProps = { readonly machine: BoardMachineAnswer; readonly phones: number; readonly href: string };

function MachineRow({ machine, phones, href }: RowProps) {
  const { name, inNow, known, job, lateByMinutes, problem, question } = machine;
  return (
    <li className={styles.row}>
      <a href={href}>
        <strong>
          <bdi>{name}</bdi>
        </strong>
      </a>
      {problem === null ? (
        <span>
          {inNow} in{known ? '' : ', as far as anybody said'}. {question?.ask ?? job?.lead}
          {job?.window === null || job === null ? '' : `, ${job.window}`}
        </span>
      ) : (
        <span>{problem}</span>
      )}
      <span className={styles.small}>
        {[lateText(lateByMinutes), `Follows: ${phonesText(phones)}`].filter((part) => part !== '').join('. ')}
      </span>
    </li>
  );
}
