'use client';

import { type RefObject, useRef } from 'react';
import { useToast } from '@/components/ui/toast';

type Field = HTMLInputElement | HTMLTextAreaElement;

type TakeAway = {
  /** Around the field that holds the text, so that it can be selected where a page may not copy. */
  readonly place: RefObject<HTMLDivElement | null>;
  readonly copy: () => Promise<void>;
  /** null where the device has no sheet for sharing. */
  readonly share: ((what: ShareData) => Promise<void>) | null;
};

/** Copies a text, or hands something to the phone's own sheet for sharing; says so either way. Client only. */
export function useTakeAway(text: string): TakeAway {
  const say = useToast();
  const place = useRef<HTMLDivElement>(null);
  const copy = async () => {
    try {
      // Missing on plain http and where a browser forbids it.
      await navigator.clipboard.writeText(text);
      say({ text: 'Copied.' });
    } catch {
      place.current?.querySelector<Field>('input, textarea')?.select();
      say({ text: 'This browser does not let a page copy. The text is selected: copy it from there.' });
    }
  };
  const share = async (what: ShareData) => {
    try {
      await navigator.share(what);
    } catch (error) {
      // Whoever closes the sheet has changed their mind; nothing to say.
      if (!(error instanceof DOMException && error.name === 'AbortError'))
        say({ text: 'The phone did not take it. Copy it instead.' });
    }
  };
  return { place, copy, share: typeof navigator.share === 'function' ? share : null };
}
