'use client';

import { useStoreHealth } from '@/components/store/store-provider';
import { useSetAside } from '@/components/store/use-set-aside';
import { useTable } from '@/components/store/use-table';
import { Button } from '@/components/ui/button';
import { saveFile } from '@/components/ui/save-file';
import { Section } from '@/components/ui/section';
import { ButtonRow, Stack } from '@/components/ui/stack';
import type { TableName, TableValue } from '@/lib/store/records';
import type { SetAside } from '@/lib/store/set-aside-record';
import { withTakenBack } from '@/lib/store/taken-back';
import { type SetAsideWords, setAsideWords } from '@/lib/words/merged';
import styles from './backup.module.css';
import { useFieldVoice } from './use-field-voice';

/** Each with what it is, where it came from, and what can be done with it. */
export function SetAsideList() {
  const health = useStoreHealth();
  const voice = useFieldVoice();
  const recordOf = useRecordOf();
  if (health === null) return <p>Looking…</p>;
  if (health.setAside.length === 0) return <p>Nothing is set aside.</p>;
  return (
    <Stack>
      {health.setAside.map((aside) => (
        <OneAside key={aside.key} aside={aside} words={setAsideWords(aside, recordOf(aside), voice)} />
      ))}
    </Stack>
  );
}

/** The record that something belongs to, where it is in a table that a person names things by. */
function useRecordOf(): (aside: SetAside) => TableValue[TableName] | null {
  const [machines, boxes, events, log] = [
    useTable('machines'),
    useTable('boxes'),
    useTable('events'),
    useTable('log'),
  ];
  const comparisons = useTable('comparisons');
  const tables: Readonly<
    Record<string, typeof machines | typeof boxes | typeof events | typeof log | typeof comparisons>
  > = {
    machines,
    boxes,
    events,
    log,
    comparisons,
  };
  return ({ table, id }) => tables[table]?.find((stored) => stored.id === id)?.value ?? null;
}

type OneAsideProps = { readonly aside: SetAside; readonly words: SetAsideWords };

function OneAside({ aside, words }: OneAsideProps) {
  const { takeBack, letGo } = useSetAside();
  return (
    <Section title={words.title}>
      <p className={styles.what}>{words.what}</p>
      <p>{words.why}</p>
      <ButtonRow>
        {aside.why === 'damaged' ? (
          <Button
            onClick={() => saveFile({ name: 'set-aside.json', type: 'application/json', text: aside.text })}
          >
            Save as a file
          </Button>
        ) : (
          <Button onClick={() => void takeBack(aside, (current) => withTakenBack(current, aside))}>
            Take back
          </Button>
        )}
        <Button kind="quiet" onClick={() => void letGo(aside)}>
          Let go
        </Button>
      </ButtonRow>
    </Section>
  );
}
