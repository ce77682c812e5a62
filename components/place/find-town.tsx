'use client';

import { type KeyboardEvent, type ReactNode, useState } from 'react';
import { Button } from '@/components/ui/button';
import { Select } from '@/components/ui/select';
import { Columns, Stack } from '@/components/ui/stack';
import { TextField } from '@/components/ui/text-field';
import { askProblemWords } from '@/lib/words/ask-problem';
import { type Asked, type FoundPlace, type PlacesState, usePlacesNamed } from './use-places';

type FindTownProps = {
  readonly label: string;
  /** What to do where no place can be looked up. */
  readonly instead: string;
  readonly children: (place: FoundPlace) => ReactNode;
};

/** A town by its name, sent off with a press, and what is then asked about the one that is meant. */
export function FindTown({ label, instead, children }: FindTownProps) {
  const [name, setName] = useState('');
  const [asked, setAsked] = useState<Asked | null>(null);
  const [chosen, setChosen] = useState(0);
  const state = usePlacesNamed(asked);
  const places = state.status === 'found' ? state.answer.places : [];
  const place = places[chosen];
  const send = () => {
    if (name.trim() === '') return;
    setChosen(0);
    setAsked((before) => ({ name: name.trim(), press: (before?.press ?? 0) + 1 }));
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key !== 'Enter') return;
    // The form around it is not sent off by this.
    event.preventDefault();
    send();
  };
  return (
    <Stack>
      <Columns>
        <TextField label={label} value={name} onChange={setName} onKeyDown={onKeyDown} />
        <Button disabled={name.trim() === '' || state.status === 'asking'} onClick={send}>
          Find the town
        </Button>
      </Columns>
      {place === undefined ? null : (
        <>
          <Select
            label="Place"
            value={String(chosen)}
            options={places.map((each, i) => ({ value: String(i), label: placeText(each) }))}
            onChange={(index) => setChosen(Number(index))}
          />
          {children(place)}
        </>
      )}
      <p role="status">{stateWords(state, asked?.name ?? '', instead)}</p>
    </Stack>
  );
}

function placeText({ name, region }: FoundPlace): string {
  return region === '' ? name : `${name}, ${region}`;
}

function stateWords(state: PlacesState, name: string, instead: string): string {
  switch (state.status) {
    case 'nothing-asked':
      return '';
    case 'asking':
      return 'Asking…';
    case 'failed':
      return askProblemWords(state.problem, instead);
    case 'found':
      return state.answer.places.length === 0
        ? `No place called “${name}” was found. Try a larger town near it.`
        : '';
  }
}
