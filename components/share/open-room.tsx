'use client';

import { useMemo, useState } from 'react';
import { useNow } from '@/components/store/use-now';
import { Notice } from '@/components/ui/notice';
import { useHash } from '@/components/ui/use-hash';
import type { LinkProblem } from '@/lib/contract/link-problem';
import type { Result } from '@/lib/result/result';
import { isClubPayload, unpackClub } from '@/lib/share/club-link';
import { readLinkPart } from '@/lib/share/link-parts';
import { unpackNight } from '@/lib/share/night-link';
import type { SharedNight } from '@/lib/share/shared-night';
import { linkProblemSentence } from '@/lib/words/link-problems';
import { ClubPick } from './club-pick';
import { LinkParts } from './link-parts';
import { NightPreview } from './night-preview';
import { OpenForm } from './open-form';

type Read = Result<SharedNight, LinkProblem>;

/** The night of the address, a club's or a single one, or of a file; with neither, the way to give one. */
export function OpenRoom() {
  const payload = useHash();
  const now = useNow();
  const part = useMemo(() => readLinkPart(payload), [payload]);
  const club = useMemo(() => (isClubPayload(payload) ? unpackClub(payload) : null), [payload]);
  const fromLink = useMemo<Read | null>(() => (payload === '' ? null : unpackNight(payload)), [payload]);
  const [fromFile, setFromFile] = useState<Read | null>(null);
  if (now === null) return null;
  if (fromFile === null && part !== null) return <LinkParts key={payload} part={part} />;
  if (fromFile === null && club?.ok === true) return <ClubPick club={club.value} now={now} />;
  const read = fromFile ?? fromLink;
  if (read?.ok === true) return <NightPreview night={read.value} now={now} />;
  const refused = fromFile === null && club !== null ? club : read;
  return (
    <>
      {refused === null || refused.ok ? null : (
        <Notice tone="caution" title="This cannot be opened. Nothing was changed.">
          <p>{linkProblemSentence(refused.reason)}</p>
        </Notice>
      )}
      <OpenForm onFile={setFromFile} onLink={() => setFromFile(null)} />
    </>
  );
}
