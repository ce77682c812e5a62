'use client';

import dynamic from 'next/dynamic';
import { useState } from 'react';
import { Button } from '@/components/ui/button';
import { Section } from '@/components/ui/section';
import { ButtonRow } from '@/components/ui/stack';
import type { NightRecords } from '@/lib/night/night';
import { BOARD_OFFER } from '@/lib/words/board-offer';
import styles from './share.module.css';

/** What posts and draws codes comes when a night is posted, or somebody wants to. */
const PostPanel = dynamic(() => import('./post-panel').then((module) => module.PostPanel), {
  ssr: false,
  loading: () => <p>Opening the board…</p>,
});

/** A night that watches itself: posted to the server, followed by phones. */
export function PostNight({ nights }: { readonly nights: readonly NightRecords[] }) {
  const [asked, setAsked] = useState(false);
  const board = nights[0]?.event.value.board;
  return (
    <Section title="Board" id="board">
      <p className={styles.words}>{BOARD_OFFER}</p>
      {asked || board !== undefined ? (
        <PostPanel nights={nights} />
      ) : (
        <ButtonRow>
          <Button onClick={() => setAsked(true)}>Post to a board</Button>
        </ButtonRow>
      )}
    </Section>
  );
}
