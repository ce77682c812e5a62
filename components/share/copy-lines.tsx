'use client';

import { Button } from '@/components/ui/button';
import { ButtonRow, Stack } from '@/components/ui/stack';
import { TextArea } from '@/components/ui/text-area';
import { useTakeAway } from './use-take-away';

type CopyLinesProps = {
  readonly label: string;
  readonly hint: string;
  readonly text: string;
  readonly shareTitle: string;
};

/** Lines to take away: read, copied, or handed to the phone's own sheet for sharing. */
export function CopyLines({ label, hint, text, shareTitle }: CopyLinesProps) {
  const { place, copy, share } = useTakeAway(text);
  const lines = text.split('\n').length;
  return (
    <div ref={place}>
      <Stack>
        <TextArea
          label={label}
          hint={hint}
          value={text}
          readOnly
          rows={Math.min(Math.max(lines + 1, 3), MOST_ROWS)}
          onChange={() => undefined}
        />
        <ButtonRow>
          <Button onClick={() => void copy()} aria-label={`Copy: ${label}`}>
            Copy
          </Button>
          {share === null ? null : (
            <Button aria-label={`Send: ${label}`} onClick={() => void share({ title: shareTitle, text })}>
              Send it
            </Button>
          )}
        </ButtonRow>
      </Stack>
    </div>
  );
}

const MOST_ROWS = 14;
