import { type FormReading, fieldReader } from '@/components/draft/field-reader';
import { type HardwareKind, hardwareShift } from '@/lib/carb/hardware';
import type { HardwareChangeRecord } from '@/lib/store/machine-history';
import { METRIC_UNITS } from '@/lib/units/choice';
import { hardwareProblemSentence } from '@/lib/words/hardware';

export type HardwareDraft = {
  readonly kind: HardwareKind;
  /** Millimetres, percent of displacement or percent of ethanol, by the kind. */
  readonly amount: string;
  /** A race fuel whose ethanol nobody states. */
  readonly unknownFuel: boolean;
  readonly on: string;
  readonly note: string;
};

export type NewHardware = Omit<HardwareChangeRecord, 'id'>;

/** The unit of the amount a kind asks for; null where it asks for none. */
export function amountUnit({
  kind,
  unknownFuel,
}: Pick<HardwareDraft, 'kind' | 'unknownFuel'>): string | null {
  if (kind === 'bored') return 'mm';
  if (kind === 'big-bore') return '%';
  return kind === 'fuel' && !unknownFuel ? '% ethanol' : null;
}

export function readHardware(draft: HardwareDraft): FormReading<NewHardware> {
  const reader = fieldReader(METRIC_UNITS);
  const { kind, on, note } = draft;
  const typed =
    amountUnit(draft) === null
      ? null
      : reader.number({ name: 'amount', text: draft.amount, example: kind === 'bored' ? '2' : '10' });
  const amount = typed === undefined || typed === null ? null : kind === 'fuel' ? typed / 100 : typed;
  if (!/^\d{4}-\d{2}-\d{2}$/.test(on)) reader.complain('on', 'Choose the day it was changed.');
  const shift = hardwareShift({ kind, amount });
  if (!shift.ok) reader.complain('amount', hardwareProblemSentence(shift.reason));
  const errors = reader.errors();
  return { value: Object.keys(errors).length > 0 ? null : { kind, amount, on, note }, errors };
}

const LABELS: Readonly<Record<string, string>> = {
  kind: 'What was changed',
  amount: 'By how much',
  on: 'On',
  note: 'Note',
};

export function hardwareLabel(name: string): string {
  return LABELS[name] ?? name;
}
