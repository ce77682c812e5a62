'use client';

import { Button } from '@/components/ui/button';
import { Notice } from '@/components/ui/notice';
import type { ReadingDesk } from './use-reading-desk';

/** What a reading moved and why; said aloud when it comes. */
export function ReadingNewsNotice({ desk }: { readonly desk: ReadingDesk }) {
  const { news } = desk;
  return (
    <div role="status" aria-label="What the reading moved">
      {news === null ? null : (
        <Notice title={news.title} act={<Button onClick={desk.dismissNews}>Seen</Button>}>
          {news.sentences.map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
        </Notice>
      )}
    </div>
  );
}
