'use client';

import { useEffect, useState } from 'react';
import { Notice } from '@/components/ui/notice';
import { joinedParts, type LinkPart, readLinkPart } from '@/lib/share/link-parts';
import { dropDraft, keepDraft, keptDraft } from '@/lib/store/drafts';
import { missingCodesWords } from '@/lib/words/sending';

type LinkPartsProps = {
  /** What the code that was scanned last holds. */
  readonly part: LinkPart;
};

const keyOf = ({ mark }: LinkPart, part: number): string => `code.${mark}.${part}`;

/** Codes scanned one after the other: each is kept until all are there, then the address becomes the whole link. */
export function LinkParts({ part }: LinkPartsProps) {
  const [missing, setMissing] = useState<readonly number[] | null>(null);
  useEffect(() => {
    keepDraft(keyOf(part, part.part), `p1.${part.mark}.${part.part}.${part.of}.${part.text}`);
    const all = Array.from({ length: part.of }, (_, i) => keptPart(part, i + 1));
    const payload = joinedParts(all.filter((each) => each !== null));
    if (payload === null) {
      setMissing(all.flatMap((each, i) => (each === null ? [i + 1] : [])));
      return;
    }
    for (let i = 1; i <= part.of; i += 1) dropDraft(keyOf(part, i));
    window.location.hash = payload;
  }, [part]);
  if (missing === null) return null;
  return <Notice title={missingCodesWords(missing, part.of)} />;
}

function keptPart(first: LinkPart, place: number): LinkPart | null {
  const kept = keptDraft(keyOf(first, place));
  return typeof kept === 'string' ? readLinkPart(kept) : null;
}
