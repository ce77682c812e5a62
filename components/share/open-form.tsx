'use client';

import { useId, useState } from 'react';
import { Button } from '@/components/ui/button';
import { fileText } from '@/components/ui/file-text';
import { ButtonRow, Stack } from '@/components/ui/stack';
import { TextField } from '@/components/ui/text-field';
import type { LinkProblem } from '@/lib/contract/link-problem';
import type { Result } from '@/lib/result/result';
import { payloadOf } from '@/lib/share/addresses';
import { MOST_FILE_CHARACTERS, readNightFile } from '@/lib/share/night-file';
import type { SharedNight } from '@/lib/share/shared-night';
import styles from './share.module.css';

type OpenFormProps = {
  readonly onFile: (read: Result<SharedNight, LinkProblem>) => void;
  /** The address carries a link now. */
  readonly onLink: () => void;
};

/** A link to paste, or a file to choose. */
export function OpenForm({ onFile, onLink }: OpenFormProps) {
  const [link, setLink] = useState('');
  const fileId = useId();
  const open = async (file: File | undefined) => {
    if (file === undefined) return;
    onFile(readNightFile(await fileText(file, MOST_FILE_CHARACTERS)));
  };
  return (
    <Stack>
      <p className={styles.words} data-for="screen">
        Paste a link to a night, or choose the file (.json) somebody sent you. You see what is in it first;
        nothing here is overwritten.
      </p>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          window.location.hash = payloadOf(link);
          onLink();
        }}
      >
        <Stack>
          <TextField label="Link" value={link} onChange={setLink} autoComplete="off" />
          <ButtonRow>
            <Button type="submit" disabled={link.trim() === ''}>
              Open the link
            </Button>
          </ButtonRow>
        </Stack>
      </form>
      <div className={styles.file} data-for="screen">
        <label htmlFor={fileId}>File with a night</label>
        <input
          id={fileId}
          type="file"
          accept=".json,application/json"
          onChange={(event) => void open(event.target.files?.[0])}
        />
      </div>
    </Stack>
  );
}
