'use client';

import { Button } from '@/components/ui/button';
import { ButtonRow, Stack } from '@/components/ui/stack';
import { TextField } from '@/components/ui/text-field';
import { useTakeAway } from './use-take-away';

type CopyFieldProps = {
  readonly label: string;
  readonly hint?: string;
  readonly text: string;
  /** With one, a phone's own sheet for sharing is offered too. */
  readonly shareTitle?: string;
};

/** A text to take away, in a field where it can also be selected by hand. */
export function CopyField({ label, hint, text, shareTitle }: CopyFieldProps) {
  const { place, copy, share } = useTakeAway(text);
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
          {shareTitle !== undefined && share !== null ? (
            <Button onClick={() => void share({ title: shareTitle, url: text })}>Send it</Button>
          ) : null}
        </ButtonRow>
      </Stack>
    </div>
  );
}
