'use client';

import { useRef } from 'react';
import { Button } from '@/components/ui/button';
import { ButtonRow, Stack } from '@/components/ui/stack';
import { TextField } from '@/components/ui/text-field';
import { useToast } from '@/components/ui/toast';

type CopyFieldProps = {
  readonly label: string;
  readonly hint?: string;
  readonly text: string;
  /** With one, a phone's own sheet for sharing is offered too. */
  readonly shareTitle?: string;
};

/** A text to take away, in a field where it can also be selected by hand. */
export function CopyField({ label, hint, text, shareTitle }: CopyFieldProps) {
  const say = useToast();
  const place = useRef<HTMLDivElement>(null);
  const copy = async () => {
    try {
      // Missing on plain http and where a browser forbids it.
      await navigator.clipboard.writeText(text);
      say({ text: 'Copied.' });
    } catch {
      place.current?.querySelector('input')?.select();
      say({ text: 'This browser does not let a page copy. The text is selected: copy it from there.' });
    }
  };
  const share = async () => {
    try {
      await navigator.share({ title: shareTitle ?? label, url: text });
    } catch (error) {
      // Whoever closes the sheet has changed their mind; nothing to say.
      if (!(error instanceof DOMException && error.name === 'AbortError'))
        say({ text: 'The phone did not take it. Copy the link instead.' });
    }
  };
  const canShare = shareTitle !== undefined && typeof navigator.share === 'function';
  return (
    <div ref={place}>
      <Stack>
        <TextField
          label={label}
          hint={hint}
          value={text}
          readOnly
          onChange={() => undefined}
          onFocus={(event) => event.target.select()}
        />
        <ButtonRow>
          <Button onClick={() => void copy()} aria-label={`Copy: ${label}`}>
            Copy
          </Button>
          {canShare ? <Button onClick={() => void share()}>Send it</Button> : null}
        </ButtonRow>
      </Stack>
    </div>
  );
}
