'use client';

import { type FormEvent, useState } from 'react';
import { useWriteAll } from '@/components/store/use-write-all';
import { Button } from '@/components/ui/button';
import { Dialog } from '@/components/ui/dialog';
import { Notice } from '@/components/ui/notice';
import { ButtonRow, Stack } from '@/components/ui/stack';
import { Switch } from '@/components/ui/switch';
import { TextField } from '@/components/ui/text-field';
import { boxText, readBoxText } from '@/lib/carb/box-text';
import type { Box } from '@/lib/carb/machine';
import { withBoxTold } from '@/lib/night/box-told';
import type { ClubRecords } from '@/lib/night/club';
import { machineWithBaseline } from '@/lib/store/machine-in-force';
import { newId } from '@/lib/store/new-id';
import type { BoxRecord, Stored } from '@/lib/store/records';
import { clubNames } from '@/lib/words/club-names';
import { isolated } from '@/lib/words/isolated';
import { counted } from '@/lib/words/listing';
import { SHARED_BOX, sharedBoxProblem } from '@/lib/words/shared-box';

type BoxDialogProps = {
  readonly boxId: string;
  readonly records: ClubRecords;
  readonly onClose: () => void;
};

/** A box that several racers take their jets from: what is in it, counted once, and who shares it. */
export function BoxDialog({ boxId, records, onClose }: BoxDialogProps) {
  const { boxes } = records;
  const [known] = useState(() => boxes.find(({ id }) => id === boxId) ?? null);
  const gone = known !== null && !boxes.some(({ id }) => id === boxId);
  return (
    <Dialog
      title={known === null ? 'A shared box' : `Box ${isolated(known.value.name)}`}
      open
      onClose={onClose}
    >
      <Stack>
        {gone ? <Notice tone="caution" title={SHARED_BOX.gone} /> : null}
        <p>{SHARED_BOX.what}</p>
        <BoxForm known={known} records={records} onClose={onClose} />
      </Stack>
    </Dialog>
  );
}

type BoxFormProps = Omit<BoxDialogProps, 'boxId'> & { readonly known: Stored<BoxRecord> | null };

function BoxForm({ known, records, onClose }: BoxFormProps) {
  const { machines } = records;
  const [name, setName] = useState(known?.value.name ?? '');
  const [jets, setJets] = useState(known === null ? '' : boxText(known.value.entries));
  const [sharers, setSharers] = useState<readonly string[]>(() =>
    machines.filter(({ value }) => known !== null && value.boxId === known.id).map(({ id }) => id),
  );
  const [refusal, setRefusal] = useState<string | null>(null);
  const put = useShareBox();
  function shareWith(id: string, on: boolean) {
    setSharers((before) => (on ? [...before, id] : before.filter((each) => each !== id)));
    const first = machines.find((each) => each.id === id);
    // The first who joins most likely brings it along.
    if (on && jets.trim() === '' && first !== undefined)
      setJets(boxText(machineWithBaseline(first.value).box));
  }
  async function save(submitted: FormEvent) {
    submitted.preventDefault();
    const box = readBoxText(jets);
    const wrong = sharedBoxProblem({ name, box, machines, sharers });
    setRefusal(wrong);
    if (wrong !== null || !box.ok) return;
    const told = {
      boxId: known?.id ?? null,
      name: name.trim().slice(0, 80),
      entries: box.value,
      sharers,
      asked: machines.map(({ id }) => id),
    };
    const refused = await put(told);
    setRefusal(refused ?? null);
    if (refused === undefined) onClose();
  }
  return (
    <form onSubmit={(submitted) => void save(submitted)}>
      <Stack>
        {refusal === null ? null : <Notice tone="danger" title={`Not saved. ${refusal}`} />}
        <BoxWords label="Name of the box" hint="Such as Trailer A." text={name} onChange={setName} />
        <Sharers records={records} boxId={known?.id ?? null} sharers={sharers} onShare={shareWith} />
        <BoxWords
          label="Jets in it"
          hint="Each jet once, such as 390x3 400x3 410x3. With those that are in the engines."
          text={jets}
          onChange={setJets}
        />
        <ButtonRow>
          <Button type="submit" kind="primary">
            Save box
          </Button>
          <Button kind="quiet" onClick={onClose}>
            Cancel
          </Button>
        </ButtonRow>
      </Stack>
    </form>
  );
}

type BoxWordsProps = {
  readonly label: string;
  readonly hint: string;
  readonly text: string;
  readonly onChange: (text: string) => void;
};

function BoxWords({ label, hint, text, onChange }: BoxWordsProps) {
  return (
    <TextField
      label={label}
      hint={hint}
      value={text}
      autoComplete="off"
      spellCheck={false}
      onChange={onChange}
    />
  );
}

type SharersProps = {
  readonly records: ClubRecords;
  readonly boxId: string | null;
  readonly sharers: readonly string[];
  readonly onShare: (id: string, on: boolean) => void;
};

function Sharers({ records, boxId, sharers, onShare }: SharersProps) {
  const names = clubNames(records);
  return (
    <fieldset>
      <legend>Who takes jets from it</legend>
      {records.machines.map(({ id, value }) => (
        <Switch
          key={id}
          label={names.racer(id)}
          {...(value.boxId === null || value.boxId === boxId
            ? {}
            : { hint: `Now: ${names.box(value.boxId)}` })}
          checked={sharers.includes(id)}
          onChange={(on) => onShare(id, on)}
        />
      ))}
    </fieldset>
  );
}

type SharedBox = {
  /** null for a new one. */
  readonly boxId: string | null;
  readonly name: string;
  readonly entries: Box;
  readonly sharers: readonly string[];
  readonly asked: readonly string[];
};

/** Puts a shared box and who takes from it, all as one act. Answers a sentence where it could not. */
function useShareBox() {
  const writeAll = useWriteAll();
  return async ({ boxId, ...box }: SharedBox): Promise<string | undefined> => {
    const id = boxId ?? newId();
    const put = await writeAll(
      (current) => withBoxTold(current, { boxId: id, ...box }),
      `Box ${box.name} is shared by ${counted(box.sharers.length, 'racer')}.`,
    );
    return put.ok ? undefined : put.reason;
  };
}
