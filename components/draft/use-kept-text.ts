'use client';

import { useEffect, useState } from 'react';
import { dropDraft, keepDraft, keptDraft } from '@/lib/store/drafts';

/** Text of a single field, kept in the browser until it is emptied, so that closing what it stands in loses nothing. Client only. */
export function useKeptText(key: string): readonly [string, (text: string) => void] {
  const [text, setText] = useState(() => {
    const kept = keptDraft(key);
    return typeof kept === 'string' ? kept : '';
  });
  useEffect(() => {
    if (text === '') dropDraft(key);
    else keepDraft(key, text);
  }, [key, text]);
  return [text, setText];
}
