'use client';

import { type FormEvent, useState } from 'react';
import { show } from '@/components/club/show';
import { useShareBox } from '@/components/club/use-share-box';
import { Button } from '@/components/ui/button';
import { Dialog } from '@/components/ui/dialog';
import { Notice } from '@/components/ui/notice';
import { ButtonRow, Stack } from '@/components/ui/stack';
import { Switch } from '@/components/ui/switch';
import { TextField } from '@/components/ui/text-field';
import { boxText, readBoxText } from '@/lib/carb/box-text';
import type { ClubRecords } from '@/lib/night/club';
import { machineWithBaseline } from '@/lib/store/machine-in-force';
import { clubNames } from '@/lib/words/club-names';
import { SHARED_BOX, sharedBoxProblem } from '@/lib/words/shared-box';

type BoxDialogProps = { readonly boxId: string; readonly records: ClubRecords };

const close = () => show('');

/** A box that several racers take their jets from: what is in it, counted once, and who shares it. */
export function BoxDialog({ boxId, records }: BoxDialogProps) {
  const { machines, boxes, event } = records;
  const [known] = useState(() => boxes.find(({ id }) => id === boxId) ?? null);
  const [name, setName] = useState(known?.value.name ?? '');
  const [jets, setJets] = useState(known === null ? '' : boxText(known.value.entries));
  const [sharers, setSharers] = useState<readonly string[]>(() =>
    machines.filter(({ value }) => value.boxId === boxId).map(({ id }) => id),
  );
  const [refusal, setRefusal] = useState<string | null>(null);
  const put = useShareBox();
  const names = clubNames(records);
  const gone = known !== null && !boxes.some(({ id }) => id === boxId);
  function shareWith(id: string, on: boolean) {
    setSharers((before) => (on ? [...before, id] : before.filter((each) => each !== id)));
    const first = machines.find((each) => each.id === id);
    // The first who joins most likely brings it along.
    if (on && jets.trim() === '' && first !== undefined) setJets(boxText(machineWithBaseline(first.value).box));
  }
  async function save(submitted: FormEvent) {
    submitted.preventDefault();
    const box = readBoxText(jets);
    const wrong = sharedBoxProblem({ name, box, machines, sharers });
    setRefusal(wrong);
    if (wrong !== null || !box.ok) return;
    const asked = machines.map(({ id }) => id);
    const refused = await put({ boxId: known?.id ?? null, name: name.trim(), entries: box.value, sharers, asked });
    if (refused === undefined) close();
    else setRefusal(refused);
  }
  return (
    <Dialog title={known === null ? 'A shared box' : `Box ${known.value.name}`} open onClose={close}>
      <form onSubmit={(submitted) => void save(submitted)}>
        <Stack>
          {gone ? <Notice tone="caution" title={SHARED_BOX.gone} /> : null}
          {refusal === null ? null : (
            <Notice tone="danger" title="Not saved.">
              <p>{refusal}</p>
            </Notice>
          )}
          <p>{SHARED_BOX.what}</p>
          <TextField
            label="Name of the box"
            hint="Such as Trailer A."
            value={name}
            maxLength={80}
            autoComplete="off"
            onChange={setName}
          />
          <fieldset>
            <legend>Who takes jets from it</legend>
            {machines.map(({ id, value }) => (
              <Switch
                key={id}
                label={names.racer(id)}
                hint={
                  value.boxId !== null && value.boxId !== boxId && event.value.machineIds.includes(id)
                    ? `Now: ${names.box(value.boxId)}`
                    : undefined
                }
                checked={sharers.includes(id)}
                onChange={(on) => shareWith(id, on)}
              />
            ))}
          </fieldset>
          <TextField
            label="Jets in it"
            hint="Each jet once, such as 390x3 400x3 410x3. With those that are in the engines."
            value={jets}
            autoComplete="off"
            spellCheck={false}
            onChange={setJets}
          />
          <ButtonRow>
            <Button type="submit" kind="primary">
              Save box
            </Button>
            <Button kind="quiet" onClick={close}>
              Cancel
            </Button>
          </ButtonRow>
        </Stack>
      </form>
    </Dialog>
  );
}
