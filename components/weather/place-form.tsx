'use client';

import { useState } from 'react';
import { EditorForm } from '@/components/draft/editor-form';
import { wholeOf } from '@/components/draft/part';
import { useDraft } from '@/components/draft/use-draft';
import { type FormState, type Save, useForm } from '@/components/draft/use-form';
import { type Axis, readCoordinatePair } from '@/components/event/coordinate';
import type { FoundPlace } from '@/components/place/use-places';
import { Notice } from '@/components/ui/notice';
import { NumberField } from '@/components/ui/number-field';
import { Columns } from '@/components/ui/stack';
import { TextField } from '@/components/ui/text-field';
import type { EventJson } from '@/lib/contract/event';
import { instantFromJson } from '@/lib/contract/event-from-json';
import type { UnitChoice } from '@/lib/units/choice';
import { placeZoneNote } from '@/lib/words/place-zone';
import { GroundProposal } from './ground-proposal';
import { LocateButton } from './locate-button';
import {
  PLACE_SHAPE,
  type PlaceDraft,
  placeDraftOf,
  placeLabel,
  pointFields,
  untakenSearch,
} from './place-draft';
import { PlaceSearch } from './place-search';
import { pointOf, readPlace, type TypedPlace } from './read-place';

type PlaceFormProps = {
  readonly id: string;
  readonly event: EventJson;
  readonly units: UnitChoice;
  readonly onSave: Save<TypedPlace>;
  readonly onCancel: () => void;
};

/** Where the forecast is wanted: found by the device, by name, or by coordinates. */
export function PlaceForm({ id, event, units, onSave, onCancel }: PlaceFormProps) {
  const [start] = useState(() => placeDraftOf(event, units));
  const draft = useDraft({ key: `place.${id}`, initial: start, shape: PLACE_SHAPE });
  const { set, setAll, value } = wholeOf(draft);
  const [found, setFound] = useState<FoundPlace | null>(null);
  const untaken = untakenSearch(value);
  const form = useForm({ draft, read: readPlace, labelOf: placeLabel, onSave, untaken });
  return (
    <EditorForm
      title="Place of the forecast"
      form={form}
      draft={draft}
      saveLabel="Get the forecast"
      onCancel={onCancel}
    >
      <LocateButton onLocated={(found) => setAll(pointFields({ ...found, name: value.name }))} />
      <PlaceSearch
        label={placeLabel('search')}
        text={value.search}
        onText={(text) => set('search', text)}
        onFound={(place) => {
          setFound(place);
          setAll({ ...pointFields(place), search: place.name, searched: place.name });
        }}
      />
      <OtherClock found={found} value={value} event={event} />
      <PointFields draft={draft} form={form} />
      <TextField
        {...form.field('name')}
        hint="As you call it."
        maxLength={120}
        autoComplete="off"
        value={value.name}
        onChange={(text) => set('name', text)}
      />
      <NumberField
        {...form.field('elevation')}
        hint="It counts: 50 m (160 ft) are 0.65 % of density."
        unit={value.units.elevation}
        value={value.elevation}
        onChange={(text) => set('elevation', text)}
      />
      <GroundProposal
        point={pointOf(value)}
        elevation={value.elevation}
        units={value.units}
        onUse={(text) => set('elevation', text)}
      />
    </EditorForm>
  );
}

type OtherClockProps = {
  readonly found: FoundPlace | null;
  readonly value: PlaceDraft;
  readonly event: EventJson;
};

/** Says so where the place that was found, and not moved since, keeps another time than the event. */
function OtherClock({ found, value, event }: OtherClockProps) {
  const first = event.runs[0];
  if (found === null || found.timezone === null || first === undefined) return null;
  const { latitude, longitude } = pointFields(found);
  if (latitude !== value.latitude || longitude !== value.longitude) return null;
  const note = placeZoneNote({
    place: found.name,
    placeZone: found.timezone,
    eventZone: event.timezone,
    at: instantFromJson(first.start),
  });
  return note === null ? null : <Notice tone="caution">{note}</Notice>;
}

type PointFieldsProps = {
  readonly draft: Parameters<typeof wholeOf<PlaceDraft>>[0];
  readonly form: FormState;
};

const HINTS: Readonly<Record<Axis, string>> = {
  latitude: 'Or both, as a map gives them.',
  longitude: 'West is negative, or 93.61 W.',
};

/** Both coordinates; pasted together into one field, each finds its own. */
function PointFields({ draft, form }: PointFieldsProps) {
  const { value, set, setAll } = wholeOf(draft);
  function enter(axis: Axis, text: string) {
    const both = readCoordinatePair(text);
    if (both === null) set(axis, text);
    else setAll(both);
  }
  const axes: readonly Axis[] = ['latitude', 'longitude'];
  return (
    <Columns>
      {axes.map((axis) => (
        <NumberField
          key={axis}
          {...form.field(axis)}
          hint={HINTS[axis]}
          signed
          inputMode="text"
          value={value[axis]}
          onChange={(text) => enter(axis, text)}
        />
      ))}
    </Columns>
  );
}
