'use client';

import { type ReactNode, useState } from 'react';
import { Button } from '@/components/ui/button';
import { Select } from '@/components/ui/select';
import { Columns, Stack } from '@/components/ui/stack';
import { TextField } from '@/components/ui/text-field';
import { type PlacesJson, placesJsonSchema } from '@/lib/weather/places-json';
import { useAnswer } from './use-answer';

export type Town = PlacesJson['places'][number];

type TownSearchProps = {
  readonly label: string;
  /** What to do where nobody can be asked. */
  readonly instead: string;
  /** What is asked about the town that was found. */
  readonly children: (town: Town) => ReactNode;
};

/** A town by its name, asked for when told to. */
export function TownSearch({ label, instead, children }: TownSearchProps) {
  const [name, setName] = useState('');
  const [asked, setAsked] = useState<string | null>(null);
  const [chosen, setChosen] = useState(0);
  const path = asked === null ? null : `/api/places?${new URLSearchParams({ q: asked })}`;
  const { data, asking, problem, again } = useAnswer(path, { reader: placesJsonSchema, instead });
  const towns = data?.places ?? [];
  const town = towns[chosen];
  function search() {
    const wanted = name.trim();
    if (wanted === '') return;
    if (wanted === asked) again();
    setChosen(0);
    setAsked(wanted);
  }
  return (
    <Stack>
      <Columns>
        <TextField
          label={label}
          value={name}
          onChange={setName}
          onKeyDown={(event) => {
            if (event.key !== 'Enter') return;
            // It may stand in a form that would be saved by it.
            event.preventDefault();
            search();
          }}
        />
        <Button disabled={name.trim() === '' || asking} onClick={search}>
          Find the town
        </Button>
      </Columns>
      {town === undefined ? null : (
        <>
          <Select
            label="Place"
            value={String(chosen)}
            options={towns.map((each, i) => ({
              value: String(i),
              label: each.region === '' ? each.name : `${each.name}, ${each.region}`,
            }))}
            onChange={(index) => setChosen(Number(index))}
          />
          {children(town)}
        </>
      )}
      <p role="status">
        {asking ? 'Asking…' : problem}
        {data !== undefined && towns.length === 0
          ? `No place called “${asked}” was found. Try a larger town near it.`
          : null}
      </p>
    </Stack>
  );
}
