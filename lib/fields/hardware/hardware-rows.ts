import { type HardwareKind, hardwareShift } from '@/lib/carb/hardware';
import { type FormReading, fieldReader } from '@/lib/fields/field-reader';
import { type DraftOf, type FieldTable, groupOf } from '@/lib/fields/field-row';
import { fieldRowsFor } from '@/lib/fields/field-rows-for';
import { numberAt } from '@/lib/fields/record-path';
import { blankDraft, readFields } from '@/lib/fields/table-values';
import { fail, ok } from '@/lib/result/result';
import type { HardwareChangeRecord } from '@/lib/store/machine-history';
import { METRIC_UNITS } from '@/lib/units/choice';
import { hardwareKindText, hardwareProblemSentence } from '@/lib/words/hardware';

export type NewHardware = Omit<HardwareChangeRecord, 'id'>;

const f = fieldRowsFor<NewHardware>();

const KINDS = [
  'airbox-off',
  'airbox-on',
  'open-filters',
  'pipe',
  'bored',
  'big-bore',
  'compression',
  'fuel',
] as const satisfies readonly HardwareKind[];

const amountIn = (unit: string, example: string) =>
  f.number({ label: 'By how much', at: 'amount', unit, example });

type AmountOf = { readonly kind: HardwareKind; readonly unknownFuel: boolean };

/** The amount that a kind asks for; null where it asks for none. */
function amountRow({ kind, unknownFuel }: AmountOf) {
  if (kind === 'bored') return amountIn('mm', '2');
  if (kind === 'big-bore') return amountIn('%', '10');
  return kind === 'fuel' && !unknownFuel ? amountIn('% ethanol', '10') : null;
}

/** The unit of the amount a kind asks for; null where it asks for none. */
export function amountUnit(of: AmountOf): string | null {
  return amountRow(of)?.unit ?? null;
}

/** A part that was changed. */
export const HARDWARE = {
  top: groupOf(
    {
      kind: f.choice({
        label: 'What was changed',
        at: 'kind',
        blank: 'airbox-off',
        control: 'select',
        options: KINDS.map((kind) => ({ value: kind, label: hardwareKindText(kind) })),
      }),
      unknownFuel: f.flag({ label: 'Race fuel, its ethanol not stated' }),
      amount: amountIn('', ''),
      on: f.own<string>({
        label: 'On',
        at: 'on',
        type: 'date',
        read: (day) => (/^\d{4}-\d{2}-\d{2}$/.test(day) ? ok(day) : fail('Choose the day it was changed.')),
        write: (day) => day,
      }),
      note: f.text({ label: 'Note', at: 'note', maxLength: 500 }),
    },
    { asked: { unknownFuel: ({ kind }) => kind === 'fuel' }, as: { amount: amountRow } },
  ),
} satisfies FieldTable;

export type HardwareDraft = DraftOf<typeof HARDWARE>;

export function newHardwareDraft(today: string): HardwareDraft {
  return { ...blankDraft(HARDWARE, METRIC_UNITS), on: today };
}

export function readHardware(draft: HardwareDraft): FormReading<NewHardware> {
  const reader = fieldReader(METRIC_UNITS);
  const { kind, on, note } = draft;
  const typed = numberAt(readFields(HARDWARE, draft, reader), 'amount') ?? null;
  const amount = typed !== null && kind === 'fuel' ? typed / 100 : typed;
  const shift = hardwareShift({ kind, amount });
  if (!shift.ok) reader.complain('amount', hardwareProblemSentence(shift.reason));
  const errors = reader.errors();
  return { value: Object.keys(errors).length > 0 ? null : { kind, amount, on, note }, errors };
}
