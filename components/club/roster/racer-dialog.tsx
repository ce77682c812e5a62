'use client';

import { type FormEvent, useState } from 'react';
import type { RosterActs } from '@/components/club/use-roster-acts';
import { Button } from '@/components/ui/button';
import { Dialog } from '@/components/ui/dialog';
import { Notice } from '@/components/ui/notice';
import { ButtonRow, Columns, Stack } from '@/components/ui/stack';
import { TextField } from '@/components/ui/text-field';
import { bibText, nameOrNone } from '@/lib/contract/name-text';
import type { ClubRecords } from '@/lib/night/club';
import { racerWords } from '@/lib/words/racer-form';

type RacerDialogProps = {
  readonly id: string;
  readonly records: ClubRecords;
  readonly acts: RosterActs;
  readonly onClose: () => void;
};

/** What one racer is called at the event, and under which number. */
export function RacerDialog({ id, records, acts, onClose }: RacerDialogProps) {
  const { event, machines } = records;
  const machine = machines.find((each) => each.id === id);
  const told = event.value.club?.racers[id];
  const [name, setName] = useState(told?.name ?? '');
  const [bib, setBib] = useState(told?.bib ?? '');
  const number = bib.trim() === '' ? undefined : bibText.safeParse(bib);
  const taken = racerWords.taken(event.value, machines, { id, bib });
  async function save(submitted: FormEvent) {
    submitted.preventDefault();
    if (number?.success === false) return;
    const refused = await acts.call(id, { name: nameOrNone.parse(name.slice(0, 80)), bib: number?.data });
    if (refused === undefined) onClose();
  }
  return (
    <Dialog title={racerWords.title} open onClose={onClose}>
      <form onSubmit={(submitted) => void save(submitted)}>
        <Stack>
          {machine === undefined ? (
            <Notice tone="caution" title={racerWords.gone} />
          ) : (
            <p>{racerWords.machine(machine.value)}</p>
          )}
          <Columns>
            <TextField
              label="Bib"
              hint="The number on the machine or the vest."
              value={bib}
              maxLength={8}
              autoComplete="off"
              error={number?.success === false ? racerWords.badBib : undefined}
              onChange={setBib}
            />
            <TextField
              label="Name"
              hint="Empty: the machine’s name."
              value={name}
              maxLength={80}
              autoComplete="off"
              onChange={setName}
            />
          </Columns>
          {taken === null ? null : <Notice tone="caution" title={taken} />}
          <ButtonRow>
            <Button type="submit" kind="primary" disabled={machine === undefined}>
              Save racer
            </Button>
            <Button kind="quiet" onClick={onClose}>
              Cancel
            </Button>
          </ButtonRow>
        </Stack>
      </form>
    </Dialog>
  );
}
