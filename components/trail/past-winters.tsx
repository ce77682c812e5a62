'use client';

import { useState } from 'react';
import useSWR from 'swr';
import type { DraftState } from '@/components/draft/use-draft';
import { FindTown } from '@/components/place/find-town';
import type { FoundPlace } from '@/components/place/use-places';
import { askFor, type Wanted } from '@/components/server/ask-for';
import { Button } from '@/components/ui/button';
import { Choice } from '@/components/ui/choice';
import { NumberField } from '@/components/ui/number-field';
import { ButtonRow, Columns, Stack } from '@/components/ui/stack';
import { Table } from '@/components/ui/table';
import { useToast } from '@/components/ui/toast';
import type { TrailDraft } from '@/lib/fields/trail/trail-rows';
import { winterMonths } from '@/lib/trail/winter';
import type { UnitChoice } from '@/lib/units/choice';
import { celsiusToKelvin } from '@/lib/units/convert';
import { elevationText } from '@/lib/units/entry-text';
import { formatElevation, formatTemperature } from '@/lib/units/format';
import { type Metre, metre } from '@/lib/units/quantity';
import { type HistoryJson, historyJsonSchema } from '@/lib/weather/history-json';
import { MONTHS, PERCENTILES, type Percentile } from '@/lib/words/months';
import { townElevationSentence } from '@/lib/words/trail-advice';
import { readSeasons } from './read-seasons';
import styles from './trail.module.css';
import { type MonthToAdd, withMonth } from './with-month';

const INSTEAD = 'Past winters cannot be looked up without it; type the days yourself.';

/** An answer of our own server; what it says when it cannot is thrown, for the caller to show. */
async function ask<T>(path: string, reader: Wanted<T>['reader']): Promise<T> {
  const answer = await askFor({ path, reader, instead: INSTEAD });
  if (answer.ok) return answer.value;
  throw new Error(answer.reason);
}

const KEPT = { revalidateOnFocus: false, revalidateOnReconnect: false, shouldRetryOnError: false } as const;

type PastWintersProps = { readonly draft: DraftState<TrailDraft>; readonly most: number };

/** The place's own past winters: how cold the riding hours of each month were. */
export function PastWinters({ draft, most }: PastWintersProps) {
  return (
    <Stack>
      <h3>From past winters</h3>
      <FindTown label="Town near the trail" instead={INSTEAD}>
        {(place) => (
          <Winters
            key={`${place.latitude} ${place.longitude} ${draft.value.elevation}`}
            place={place}
            draft={draft}
            most={most}
          />
        )}
      </FindTown>
    </Stack>
  );
}

type WintersProps = PastWintersProps & { readonly place: FoundPlace };

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
      <ButtonRow>
        <Button disabled={past.isLoading} onClick={look}>
          Look up past winters
        </Button>
      </ButtonRow>
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
  readonly place: FoundPlace;
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
      <ButtonRow>
        <Button
          onClick={() =>
            draft.change(null, (before) => ({ ...before, elevation: elevationText(town, before.units) }))
          }
        >
          Take {formatElevation(town, units)} for the place
        </Button>
      </ButtonRow>
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
