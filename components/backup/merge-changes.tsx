'use client';

import { Disclosure } from '@/components/ui/disclosure';
import type { RecordChange } from '@/lib/store/merge-snapshot';
import { counted } from '@/lib/words/listing';
import { mergedWords } from '@/lib/words/merged';
import styles from './backup.module.css';
import { useFieldVoice } from './use-field-voice';

/** As many as a person reads before acting; the others are one press away. */
const SHOWN = 8;

type MergeChangesProps = {
  readonly changes: readonly RecordChange[];
  /** Machines that may not be here yet. */
  readonly machines?: Parameters<typeof useFieldVoice>[0];
};

/** What a merge would change, field by field, in words. */
export function MergeChanges({ changes, machines }: MergeChangesProps) {
  const voice = useFieldVoice(machines);
  const words = mergedWords(changes, voice);
  if (words.length === 0)
    return (
      <p>{`A merge would change nothing${changes.length === 0 ? ': all of it is here already' : ' here'}.`}</p>
    );
  const [first, rest] = [words.slice(0, SHOWN), words.slice(SHOWN)];
  return (
    <div className={styles.changes}>
      <Records words={first} />
      {rest.length === 0 ? null : (
        <Disclosure summary={`${counted(rest.length, 'more record')}`}>
          <Records words={rest} />
        </Disclosure>
      )}
    </div>
  );
}

function Records({ words }: { readonly words: ReturnType<typeof mergedWords> }) {
  return (
    <>
      {words.map(({ key, title, lines }) => (
        <div key={key}>
          <p className={styles.what}>{title}</p>
          <ul>
            {lines.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </div>
      ))}
    </>
  );
}
