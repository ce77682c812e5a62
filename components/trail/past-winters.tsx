'use client';

import { useState } from 'react';
import useSWR from 'swr';
import type { DraftState } from '@/components/draft/use-draft';
import { askFor, type Wanted } from '@/components/server/ask-for';
import { Button } from '@/components/ui/button';
import { Choice } from '@/components/ui/choice';
import { NumberField } from '@/components/ui/number-field';
import { Select } from '@/components/ui/select';
import { Acts, Columns, Stack } from '@/components/ui/stack';
import { Table } from '@/components/ui/table';
import { TextField } from '@/components/ui/text-field';
import { useToast } from '@/components/ui/toast';
import type { TrailDraft } from '@/lib/fields/trail/trail-rows';
import { winterMonths } from '@/lib/trail/winter';
import type { UnitChoice } from '@/lib/units/choice';
import { celsiusToKelvin } from '@/lib/units/convert';
import { elevationText } from '@/lib/units/entry-text';
import { formatElevation, formatTemperature } from '@/lib/units/format';
import { type Metre, metre } from '@/lib/units/quantity';
import { type HistoryJson, historyJsonSchema } from '@/lib/weather/history-json';
import { type PlacesJson, placesJsonSchema } from '@/lib/weather/places-json';
import { townElevationSentence } from '@/lib/words/trail-advice';
import { MONTHS, PERCENTILES, type Percentile } from './month-names';
import { readSeasons } from './read-seasons';
import styles from './trail.module.css';
import { type MonthToAdd, withMonth } from './with-month';

type Place = PlacesJson['places'][number];

/** An answer of our own server; what it says when it cannot is thrown, for the caller to show. */
async function ask<T>(path: string, reader: Wanted<T>['reader']): Promise<T> {
  const instead = 'Past winters cannot be looked up without it; type the days yourself.';
  const answer = await askFor({ path, reader, instead });
  if (answer.ok) return answer.value;
  throw new Error(answer.reason);
}

const KEPT = { revalidateOnFocus: false, revalidateOnReconnect: false, shouldRetryOnError: false } as const;

type PastWintersProps = { readonly draft: DraftState<TrailDraft>; readonly most: number };

/** The place's own past winters: how cold the riding hours of each month were. */
export function PastWinters({ draft, most }: PastWintersProps) {
  const [name, setName] = useState('');
  const [asked, setAsked] = useState<string | null>(null);
  const [chosen, setChosen] = useState(0);
  const found = useSWR(
    asked === null ? null : `/api/places?${new URLSearchParams({ q: asked })}`,
    (path: string) => ask(path, placesJsonSchema),
    KEPT,
  );
  const places = found.data?.places ?? [];
  const place = places[chosen];
  return (
    <Stack>
      <h3>From past winters</h3>
      <Columns>
        <TextField
          label="Town near the trail"
          value={name}
          onChange={setName}
          onKeyDown={(event) => {
            if (event.key === 'Enter') setAsked(name.trim());
          }}
        />
        <Button
          disabled={name.trim() === '' || found.isLoading}
          onClick={() => {
            setChosen(0);
            setAsked(name.trim());
          }}
        >
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
          <Winters
            key={`${place.latitude} ${place.longitude} ${draft.value.elevation}`}
            place={place}
            draft={draft}
            most={most}
          />
        </>
      )}
      <p role="status">
        {found.isLoading ? 'Asking…' : null}
        {found.error instanceof Error ? found.error.message : null}
        {found.data !== undefined && places.length === 0
          ? `No place called “${asked}” was found. Try a larger town near it.`
          : null}
      </p>
    </Stack>
  );
}

function placeText({ name, region }: Place): string {
  return region === '' ? name : `${name}, ${region}`;
}

type WintersProps = PastWintersProps & { readonly place: Place };

function Winters({ place, draft, most }: WintersProps) {
  const { units } = draft.value;
  const [from, setFrom] = useState('8');
  const [to, setTo] = useState('20');
  const [query, setQuery] = useState<string | null>(null);
  // The days stand beside others at the rider's own elevation, so past winters are asked for at that one.
  const typed = readSeasons({ units, elevation: draft.value.elevation, conditions: [] }).elevation;
  const asked = typed ?? place.elevationM;
  const past = useSWR(query, (path: string) => ask(path, historyJsonSchema), KEPT);
  function look() {
    const hours = `${Math.trunc(Number(from))}-${Math.trunc(Number(to))}`;
    const parts = {
      lat: String(place.latitude),
      lon: String(place.longitude),
      months: winterMonths(place.latitude).join(','),
      hours,
      ...(asked === null ? {} : { elevation: String(asked) }),
    };
    setQuery(`/api/history?${new URLSearchParams(parts)}`);
  }
  return (
    <>
      <Columns>
        <NumberField label="Riding from" unit="h" value={from} onChange={setFrom} />
        <NumberField label="Riding until" unit="h" value={to} onChange={setTo} />
      </Columns>
      <Acts>
        <Button disabled={past.isLoading} onClick={look}>
          Look up past winters
        </Button>
      </Acts>
      <TownElevation place={place} typed={typed} draft={draft} />
      <p role="status">
        {past.isLoading ? 'Asking for three winters, which takes a moment…' : null}
        {past.error instanceof Error ? past.error.message : null}
      </p>
      {past.data === undefined ? null : (
        <Months history={past.data} units={units} draft={draft} most={most} />
      )}
    </>
  );
}

/** Nearer than this a town counts as being as high as the trail: a tenth of a size of main. Judgement. */
const AS_HIGH_M = 50;

type TownProps = {
  readonly place: Place;
  readonly typed: Metre | null;
  readonly draft: PastWintersProps['draft'];
};

/** Offers the town's elevation where it is another; it is never taken unasked, since it moves every main. */
function TownElevation({ place, typed, draft }: TownProps) {
  const { units } = draft.value;
  if (place.elevationM === null) return null;
  if (typed !== null && Math.abs(typed - place.elevationM) < AS_HIGH_M) return null;
  const town = metre(place.elevationM);
  return (
    <>
      <p>
        {townElevationSentence(place.name, {
          town: formatElevation(town, units),
          typed: typed === null ? null : formatElevation(typed, units),
        })}
      </p>
      <Acts>
        <Button
          onClick={() =>
            draft.change(null, (before) => ({ ...before, elevation: elevationText(town, before.units) }))
          }
        >
          Take {formatElevation(town, units)} for the place
        </Button>
      </Acts>
    </>
  );
}

type MonthsProps = PastWintersProps & { readonly history: HistoryJson; readonly units: UnitChoice };

function Months({ history, units, draft, most }: MonthsProps) {
  const [percentile, setPercentile] = useState<Percentile>('p10');
  const toast = useToast();
  const celsius = (degrees: number) => formatTemperature(celsiusToKelvin(degrees), units);
  function add(month: MonthToAdd) {
    draft.change(null, (before) => withMonth(before, { month, percentile }, most));
    toast({ text: `${MONTHS[month.month - 1]} added to the days.`, act: { label: 'Undo', do: draft.undo } });
  }
  return (
    <>
      <Choice
        label="Set up for"
        value={percentile}
        options={PERCENTILES}
        onChange={setPercentile}
        hint="The cold hours are the ones that must not be lean."
      />
      <Table
        caption={`Riding hours of past winters at ${formatElevation(metre(history.elevationM), units)}, days ${history.stretches.map(({ from, to }) => `${from} to ${to}`).join(', ')}.`}
        columns={[
          { head: 'Month', names: true, cell: ({ month }: MonthToAdd) => MONTHS[month - 1] },
          { head: '1 in 10 colder', figures: true, cell: ({ temperatureC }) => celsius(temperatureC.p10) },
          { head: 'Middle', figures: true, cell: ({ temperatureC }) => celsius(temperatureC.p50) },
          { head: '1 in 10 warmer', figures: true, cell: ({ temperatureC }) => celsius(temperatureC.p90) },
          {
            head: 'Add',
            cell: (month) => (
              <Button aria-label={`Add ${MONTHS[month.month - 1]}`} onClick={() => add(month)}>
                Add
              </Button>
            ),
          },
        ]}
        rows={history.months}
        rowKey={({ month }) => String(month)}
        empty="No past hours were found for these months."
      />
      <p className={styles.source}>
        <a href={history.attributionUrl}>{history.attribution}</a>
      </p>
    </>
  );
}
