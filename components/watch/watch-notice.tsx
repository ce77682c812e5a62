'use client';

import { Button } from '@/components/ui/button';
import { Notice } from '@/components/ui/notice';
import { VisuallyHidden } from '@/components/ui/visually-hidden';
import { together } from '@/lib/words/together';
import type { Watch } from './use-watch';

type WatchNoticeProps = {
  readonly watch: Watch;
  readonly onAccept: () => void;
  /** False while a reading's own news says the same. */
  readonly shown: boolean;
};

/** Stands at the head of the page where the next act is not the accepted one any more; heard once, seen until settled. */
export function WatchNotice({ watch: { state, said }, onAccept, shown }: WatchNoticeProps) {
  return (
    <>
      <VisuallyHidden>
        <output aria-label="Watch">{said}</output>
      </VisuallyHidden>
      {shown && state.status === 'next-act-changed' ? (
        <Notice
          tone="caution"
          title="Your plan has changed."
          act={<Button onClick={onAccept}>This is my plan now</Button>}
        >
          {state.differences.map((sentence) => (
            <p key={sentence}>{together(sentence)}</p>
          ))}
        </Notice>
      ) : null}
    </>
  );
}
