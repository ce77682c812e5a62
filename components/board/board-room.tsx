'use client';

import { useMemo } from 'react';
import { useClockZone } from '@/components/store/use-clock-zone';
import { useNow } from '@/components/store/use-now';
import { Notice } from '@/components/ui/notice';
import { useHash } from '@/components/ui/use-hash';
import { Way } from '@/components/ui/way';
import type { BoardAnswer } from '@/lib/contract/board-answer';
import { type BoardDoorway, followHash, readDoorway } from '@/lib/share/board-address';
import { type Instant, instant } from '@/lib/time/instant';
import { BOARD_WORDS } from '@/lib/words/board-page';
import { countdown } from '@/lib/words/countdown';
import styles from './board.module.css';
import { KeeperView } from './keeper-view';
import { MachineView } from './machine-view';
import { type BoardView, useBoard } from './use-board';

/** A board as its link opens it: for its keeper, or for who follows one machine. */
export function BoardRoom() {
  const hash = useHash();
  const door = useMemo(() => readDoorway(hash), [hash]);
  return door === null ? (
    <NoBoard words={hash === '' ? BOARD_WORDS.opened : BOARD_WORDS.gone} />
  ) : (
    <Opened door={door} />
  );
}

function NoBoard({ words }: { readonly words: string }) {
  return (
    <div className={styles.room}>
      <h1>Board</h1>
      <p className={styles.words}>{words}</p>
      <p className={styles.words}>{BOARD_WORDS.what}</p>
      <Way href="/club">Post one from the club’s night</Way>
    </div>
  );
}

function Opened({ door }: { readonly door: BoardDoorway }) {
  const view = useBoard(door);
  const now = useNow();
  const { board, gone, silent, problem } = view;
  if (gone !== null) return <NoBoard words={gone} />;
  if (board === null || now === null)
    return <p role="status">{silent ? BOARD_WORDS.noAnswer : 'Opening the board…'}</p>;
  return (
    <div className={styles.room}>
      <Head board={board} now={now} />
      {silent ? <Notice tone="caution" title={BOARD_WORDS.noAnswer} /> : null}
      {problem === null ? null : <Notice tone="caution" title={problem} />}
      <Inside door={door} view={view} board={board} now={now} />
    </div>
  );
}

type InsideProps = {
  readonly door: BoardDoorway;
  readonly view: BoardView;
  readonly board: BoardAnswer;
  readonly now: Instant;
};

function Inside({ door, view, board, now }: InsideProps) {
  const zone = useClockZone(board.event.timezone);
  if (door.keeps && board.keeper !== null)
    return <KeeperView {...{ door, view, board, now, zone }} keeper={board.keeper} />;
  const machine = board.machines.find(({ id }) => id === door.machine);
  if (machine === undefined) return <PickName door={door} board={board} />;
  return <MachineView key={machine.id} {...{ door, view, board, machine, now, zone }} />;
}

function Head({
  board: { event, hours, plannedAt },
  now,
}: {
  readonly board: BoardAnswer;
  readonly now: Instant;
}) {
  const planned = countdown(now, instant(Math.min(now, Date.parse(plannedAt))));
  const age = hours.age === 'none' ? 'no hours' : `hours ${hours.age}`;
  return (
    <div className={styles.head}>
      <h1>{event.name}</h1>
      <p className={styles.small}>
        Planned {planned}, {age}. {hours.attribution}
      </p>
    </div>
  );
}

function PickName({ door, board }: { readonly door: BoardDoorway; readonly board: BoardAnswer }) {
  return (
    <>
      <h2>{BOARD_WORDS.pick}</h2>
      <ul className={styles.names}>
        {board.machines.map(({ id, name, job }) => (
          <li key={id}>
            <a className={styles.name} href={`#${followHash(door, id)}`}>
              {name}
              <span className={styles.small}>{job?.lead ?? 'No call'}</span>
            </a>
          </li>
        ))}
      </ul>
    </>
  );
}
