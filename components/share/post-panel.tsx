'use client';

import { useMemo } from 'react';
import { Button } from '@/components/ui/button';
import { Disclosure } from '@/components/ui/disclosure';
import { Notice } from '@/components/ui/notice';
import { ButtonRow, Stack } from '@/components/ui/stack';
import { Way } from '@/components/ui/way';
import type { NightRecords } from '@/lib/night/night';
import { BOARD_PAGE, boardAddress, followHash, keepHash } from '@/lib/share/board-address';
import { boardLacks } from '@/lib/share/board-post';
import type { EventRecord } from '@/lib/store/records';
import { instant } from '@/lib/time/instant';
import { BOARD_WORDS, isOwnMachine } from '@/lib/words/board-page';
import { CopyField } from './copy-field';
import { QrCode } from './qr-code';
import styles from './share.module.css';
import { usePosting } from './use-posting';

/** What posting does, the one button that does it, and after that the links. */
export function PostPanel({ nights }: { readonly nights: readonly NightRecords[] }) {
  const posting = usePosting(nights);
  const { busy, problem, post, ready } = posting;
  const board = nights[0]?.event.value.board;
  return (
    <Stack>
      {problem === null ? null : <Notice tone="caution" title={problem} />}
      {board === undefined ? (
        <>
          <p className={styles.words}>{BOARD_WORDS.what}</p>
          <p className={styles.words}>{BOARD_WORDS.kept}</p>
          <ButtonRow>
            <Button kind="primary" disabled={busy || !ready} onClick={() => void post()}>
              Post it
            </Button>
          </ButtonRow>
        </>
      ) : (
        <Posted nights={nights} board={board} posting={posting} />
      )}
    </Stack>
  );
}

type PostedProps = {
  readonly nights: readonly NightRecords[];
  readonly board: NonNullable<EventRecord['board']>;
  readonly posting: ReturnType<typeof usePosting>;
};

function Posted({ nights, board, posting: { busy, sendChanges, takeDown } }: PostedProps) {
  const { origin, hostname } = window.location;
  const link = boardAddress(origin, followHash(board));
  const { name } = nights[0]!.event.value.event;
  const lacks = useMemo(() => boardLacks(nights, instant(Date.now())), [nights]);
  return (
    <>
      <CopyField label="Link for your racers" hint={BOARD_WORDS.link} text={link} shareTitle={name} />
      {isOwnMachine(hostname) ? <Notice title={BOARD_WORDS.ownMachine} /> : null}
      <Disclosure summary="Code to scan">
        <QrCode text={link} title={`Board of ${name}`} />
      </Disclosure>
      <ButtonRow>
        <Way href={`${BOARD_PAGE}#${keepHash(board)}`}>Who follows, what was told</Way>
        {lacks ? (
          <Button disabled={busy} onClick={() => void sendChanges(board)}>
            Send what changed
          </Button>
        ) : null}
        <Button disabled={busy} onClick={() => void takeDown(board)}>
          Take it down
        </Button>
      </ButtonRow>
    </>
  );
}
