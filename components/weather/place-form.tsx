'use client';

import { useState } from 'react';
import { EditorForm } from '@/components/draft/editor-form';
import { wholeOf } from '@/components/draft/part';
import { useFields } from '@/components/draft/use-fields';
import type { Save } from '@/components/draft/use-form';
import type { FoundPlace } from '@/components/place/use-places';
import { Notice } from '@/components/ui/notice';
import { Columns } from '@/components/ui/stack';
import type { EventJson } from '@/lib/contract/event';
import { instantFromJson } from '@/lib/contract/event-from-json';
import { PLACE, type PlaceDraft, pointOf, readPlace, type TypedPlace } from '@/lib/fields/place/place-rows';
import { draftFrom } from '@/lib/fields/table-values';
import type { UnitChoice } from '@/lib/units/choice';
import { placeZoneNote } from '@/lib/words/place-zone';
import { GroundProposal } from './ground-proposal';
import { LocateButton } from './locate-button';
import { pointFields, untakenSearch } from './place-draft';
import { PlaceSearch } from './place-search';

type PlaceFormProps = {
  readonly id: string;
  readonly event: EventJson;
  readonly units: UnitChoice;
  readonly onSave: Save<TypedPlace>;
  readonly onCancel: () => void;
};

/** Where the forecast is wanted: found by the device, by name, or by coordinates. */
export function PlaceForm({ id, event, units, onSave, onCancel }: PlaceFormProps) {
  const { draft, form, field } = useFields({
    key: `place.${id}`,
    table: PLACE,
    initial: () => draftFrom(PLACE, event, units),
    read: readPlace,
    onSave,
    untaken: untakenSearch,
  });
  const { set, setAll, value } = wholeOf(draft);
  const [found, setFound] = useState<FoundPlace | null>(null);
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
        label={PLACE.top.rows.search.label}
        text={value.search}
        onText={(text) => set('search', text)}
        onFound={(place) => {
          setFound(place);
          setAll({ ...pointFields(place), search: place.name, searched: place.name });
        }}
      />
      <OtherClock found={found} value={value} event={event} />
      <Columns>
        {field('latitude')}
        {field('longitude')}
      </Columns>
      {field('name')}
      {field('elevation')}
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
