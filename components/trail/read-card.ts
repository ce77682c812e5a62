import { ASSUMED_RELATIVE_HUMIDITY } from '@/lib/contract/air-from-json';
import { type FieldErrors, fieldReader } from '@/lib/fields/field-reader';
import { readNumberRow } from '@/lib/fields/table-values';
import { type CardDraft, TRAIL } from '@/lib/fields/trail/trail-rows';
import type { CardAxes } from '@/lib/trail/card';
import type { UnitChoice } from '@/lib/units/choice';
import { elevationFrom, elevationIn, temperatureFrom, temperatureIn } from '@/lib/units/choice';
import { celsiusToKelvin } from '@/lib/units/convert';
import { plainNumber } from '@/lib/units/format';
import { metre, ratio } from '@/lib/units/quantity';

export type CardReading = { readonly axes: CardAxes | null; readonly errors: FieldErrors };

/** A pocket card holds this many lines and columns that can still be read with cold eyes: fewer with more in a cell. */
export const MOST_ROWS: Readonly<Record<CardDraft['shows'], number>> = {
  main: 14,
  'main-screw': 10,
  'main-screw-clip': 10,
};
export const MOST_COLUMNS = 7;

/** Rows from the warmest down, columns from the lowest up. */
export function readCard(draft: CardDraft, units: UnitChoice): CardReading {
  const fields = fieldReader(units);
  const number = (name: Exclude<keyof CardDraft, 'shows'>) =>
    readNumberRow(TRAIL.card.rows[name], draft[name], name, fields);
  const [coldest, warmest] = [number('coldest'), number('warmest')];
  const [lowest, highest] = [number('lowest'), number('highest')];
  const [step, rise] = [number('step'), number('rise')];
  const rows = counted(
    { name: 'step', from: coldest, to: warmest, by: step, most: MOST_ROWS[draft.shows] },
    fields.complain,
  );
  const columns = counted(
    { name: 'rise', from: lowest, to: highest, by: rise, most: MOST_COLUMNS },
    fields.complain,
  );
  const bad = Object.keys(fields.errors()).length > 0;
  if (bad || rows === null || columns === null || warmest === undefined || lowest === undefined)
    return { axes: null, errors: fields.errors() };
  // Steps are counted in the person's units, so that 10 °F steps stay on whole tens.
  const top = temperatureIn(celsiusToKelvin(warmest), units.temperature);
  const stepIn = (step ?? 0) * (units.temperature === 'F' ? 1.8 : 1);
  const low = elevationIn(metre(lowest), units.elevation);
  const riseIn = elevationIn(metre(rise ?? 0), units.elevation);
  return {
    axes: {
      temperatures: rows.map((i) =>
        temperatureFrom(plainNumber(top - i * stepIn, TYPED_DIGITS), units.temperature),
      ),
      elevations: columns.map((i) =>
        elevationFrom(plainNumber(low + i * riseIn, TYPED_DIGITS), units.elevation),
      ),
      relativeHumidity: ratio(ASSUMED_RELATIVE_HUMIDITY),
    },
    errors: fields.errors(),
  };
}

/** Nobody types more; what was kept in other units is not whole to more. */
const TYPED_DIGITS = 4;

type Span = {
  readonly name: string;
  readonly from: number | undefined;
  readonly to: number | undefined;
  readonly by: number | undefined;
  readonly most: number;
};

function counted(
  { name, from, to, by, most }: Span,
  complain: (name: string, sentence: string) => void,
): readonly number[] | null {
  if (from === undefined || to === undefined || by === undefined) return null;
  if (to < from) complain(name, 'The first and the last are the wrong way round.');
  else if (!(by > 0)) complain(name, 'The step must be more than nothing.');
  else {
    const count = Math.floor((to - from) / by + 1e-6) + 1;
    if (count <= most) return Array.from({ length: count }, (_, i) => i);
    complain(name, `That makes ${count} lines; a card holds ${most}. Take a wider step.`);
  }
  return null;
}
