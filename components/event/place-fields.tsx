'use client';

import { wholeOf } from '@/components/draft/part';
import { NumberField } from '@/components/ui/number-field';
import { Columns, Stack } from '@/components/ui/stack';
import { TextField } from '@/components/ui/text-field';
import { type Axis, readCoordinatePair } from './coordinate';
import type { EventSectionProps } from './section-props';

/** What the event is called and where it is. */
export function PlaceFields({ draft, form }: EventSectionProps) {
  const whole = wholeOf(draft);
  const { name, placeName, elevation, units } = draft.value;
  return (
    <Stack>
      <TextField
        {...form.field('name')}
        value={name}
        maxLength={80}
        autoComplete="off"
        onChange={(text) => whole.set('name', text)}
      />
      <Columns>
        <NumberField
          {...form.field('elevation')}
          hint="Of the track."
          unit={units.elevation}
          value={elevation}
          onChange={(text) => whole.set('elevation', text)}
        />
        <TextField
          {...form.field('placeName')}
          hint="Optional; gives dusk and forecasts."
          maxLength={120}
          autoComplete="off"
          value={placeName}
          onChange={(text) => whole.set('placeName', text)}
        />
      </Columns>
      <Columns>
        <CoordinateField axis="latitude" draft={draft} form={form} />
        <CoordinateField axis="longitude" draft={draft} form={form} />
      </Columns>
    </Stack>
  );
}

const COORDINATE_HINTS: Readonly<Record<Axis, string>> = {
  latitude: 'Or both, as a map gives them.',
  longitude: 'West is negative, or 93.61 W.',
};

function CoordinateField({ axis, draft, form }: EventSectionProps & { readonly axis: Axis }) {
  const whole = wholeOf(draft);
  function enter(text: string) {
    const both = readCoordinatePair(text);
    if (both === null) whole.set(axis, text);
    else whole.setAll(both);
  }
  return (
    <NumberField
      {...form.field(axis)}
      hint={COORDINATE_HINTS[axis]}
      signed
      inputMode="text"
      value={draft.value[axis]}
      onChange={enter}
    />
  );
}
