import type { MachineJson } from '@/lib/contract/machine';
import { type DraftOf, type FieldTable, groupOf } from '@/lib/fields/field-row';
import { fieldRowsFor } from '@/lib/fields/field-rows-for';
import { TURNS_OUT } from '@/lib/words/screw';
import { NEEDLE, PILOT } from './circuit-rows';

const f = fieldRowsFor<MachineJson>();

/** What can be read off a machine that runs right at home: the fewest fields that a jet card can be made of. */
export const HOME = {
  top: groupOf({
    carburettors: f.choice({
      label: 'Carburettors',
      blank: '2',
      options: ['1', '2', '3', '4'].map((count) => ({ value: count, label: count })),
    }),
    main: f.number({
      label: 'Main jet',
      example: '380',
      needed: 'Type the number stamped on the main jet, such as 380.',
      hint: 'The number stamped on its head.',
    }),
    temperature: f.temperature({
      label: 'Temperature',
      at: 'baseline.air.temperatureC',
      example: '-5',
      hint: 'Of a usual day on which it runs right.',
    }),
    elevation: f.elevation({
      label: 'Elevation',
      at: 'baseline.air.elevationM',
      signed: true,
      example: '300',
      hint: 'Of that place, as a map tells it.',
    }),
    pilot: f.number({
      label: 'Pilot jet',
      at: 'pilot.jet',
      optional: true,
      example: '45',
      hint: 'The number stamped on it. Leave it empty if you cannot see it.',
    }),
    screw: f.choice({
      label: 'Kind of screw',
      at: 'pilot.screw',
      blank: 'fuel',
      options: PILOT.rows.screw.options as readonly { value: 'fuel' | 'air'; label: string }[],
    }),
    turns: f.turns({
      label: 'Turns out',
      at: 'pilot.turns',
      optional: true,
      example: '1 1/2',
      hint: TURNS_OUT,
    }),
    groove: f.number({
      label: 'Clip groove',
      at: 'needle.groove',
      optional: true,
      example: NEEDLE.rows.groove.example ?? '',
      hint: 'Counted from the top of the needle. Leave it empty if you cannot see it.',
    }),
  }),
} satisfies FieldTable;

export type HomeDraft = DraftOf<typeof HOME>;
