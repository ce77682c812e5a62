'use client';

import { Button } from '@/components/ui/button';
import { Notice } from '@/components/ui/notice';
import type { ReadingDesk } from './use-reading-desk';

type ReadingNewsProps = {
  readonly desk: ReadingDesk;
  /** null where the plan is the accepted one, or none was accepted. */
  readonly onAccept: (() => void) | null;
};

/** What a reading moved and why, to look at until it is seen; `useReadingDesk` has it spoken, once. */
export function ReadingNewsNotice({ desk, onAccept }: ReadingNewsProps) {
  const { news } = desk;
  function accept() {
    onAccept?.();
    desk.dismissNews();
  }
  if (news === null) return null;
  return (
    <section aria-label="What the reading moved">
      <Notice
        title={news.title}
        act={
          <>
            {onAccept === null ? null : <Button onClick={accept}>This is my plan now</Button>}
            <Button onClick={desk.dismissNews}>Seen</Button>
          </>
        }
      >
        {news.sentences.map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
      </Notice>
    </section>
  );
}
