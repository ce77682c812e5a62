'use client';

import { useMemo, useState } from 'react';
import { useNow } from '@/components/store/use-now';
import { Notice } from '@/components/ui/notice';
import { useHash } from '@/components/ui/use-hash';
import type { LinkProblem } from '@/lib/contract/link-problem';
import type { Result } from '@/lib/result/result';
import { unpackNight } from '@/lib/share/night-link';
import type { SharedNight } from '@/lib/share/shared-night';
import { linkProblemSentence } from '@/lib/words/link-problems';
import { NightPreview } from './night-preview';
import { OpenForm } from './open-form';

type Read = Result<SharedNight, LinkProblem>;

/** The night of the address, or of a file; with neither, the way to give one. */
export function OpenRoom() {
  const payload = useHash();
  const now = useNow();
  const fromLink = useMemo<Read | null>(() => (payload === '' ? null : unpackNight(payload)), [payload]);
  const [fromFile, setFromFile] = useState<Read | null>(null);
  const read = fromFile ?? fromLink;
  if (now === null) return null;
  if (read?.ok === true) return <NightPreview night={read.value} now={now} />;
  return (
    <>
      {read === null ? null : (
        <Notice tone="caution" title="This cannot be opened. Nothing was changed.">
          <p>{linkProblemSentence(read.reason)}</p>
        </Notice>
      )}
      <OpenForm onFile={setFromFile} onLink={() => setFromFile(null)} />
    </>
  );
}
