import type { MachineJson } from '@/lib/contract/machine';
import { airRowsAt } from '@/lib/fields/air/air-rows';
import { type DraftOf, type FieldTable, groupOf } from '@/lib/fields/field-row';
import { fieldRowsFor } from '@/lib/fields/field-rows-for';
import { blankDraft } from '@/lib/fields/table-values';
import type { NewBaseline } from '@/lib/store/machine-history';
import type { UnitChoice } from '@/lib/units/choice';
import { numberText } from '@/lib/units/entry-text';
import { jetsText } from '@/lib/words/settings';
import { PROOF_CHOICES, PROOF_HINTS } from '@/lib/words/verdict-choices';

/** A baseline as a person tells it; the id is given when it is kept. */
export type ToldBaseline = Omit<NewBaseline, 'id'>;

const f = fieldRowsFor<ToldBaseline>();
const air = airRowsAt<ToldBaseline>('baseline.air');

/** Jets proven right, and the air they were proven in. */
export const NEW_BASELINE = {
  top: groupOf({
    source: f.choice({
      label: 'In what air were they proven?',
      blank: 'typed',
      options: [
        { value: 'log', label: 'A run in the log' },
        { value: 'typed', label: 'Typed weather' },
        { value: 'past', label: 'A place and past hour' },
      ],
    }),
    mains: f.raw({ label: 'Main jets', at: 'mains', hint: '410, or 410 400 410' }),
    trim: f.number({ label: 'Trim', at: 'trim', optional: true, signed: true, example: '2' }),
    judged: f.choice({
      label: 'How the jets were judged',
      at: 'baseline.judged',
      blank: 'right',
      options: PROOF_CHOICES,
      hint: PROOF_HINTS,
    }),
    provenOn: f.text({
      label: 'Proven on',
      at: 'baseline.provenOn',
      optional: true,
      type: 'date',
      hint: 'Parts changed up to this day count as proven with it.',
    }),
    note: f.text({ label: 'Note', at: 'baseline.note', optional: true, maxLength: 500, hint: 'Optional.' }),
  }),
  air: groupOf(air.rows, air),
} satisfies FieldTable;

export type NewBaselineDraft = DraftOf<typeof NEW_BASELINE>;

/** A new baseline: the jets of now, today, in an air that is yet to be said. */
export function newBaselineDraft(machine: MachineJson, units: UnitChoice, today: string): NewBaselineDraft {
  return {
    ...blankDraft(NEW_BASELINE, units),
    mains: jetsText(machine.carburettors.map(({ main }) => main)),
    trim: machine.trim === undefined ? '' : numberText(machine.trim.baseline),
    provenOn: today,
  };
}
