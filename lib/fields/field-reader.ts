import type { UnitChoice } from '@/lib/units/choice';
import { withoutDust } from '@/lib/units/entry-text';
import { entryProblemSentence } from '@/lib/words/entry-problems';
import type { NumberKind } from './field-row';
import { NUMBER_KINDS } from './number-kinds';

/** One sentence per field that cannot be used as it stands, by the field's name, in the order of the form. */
export type FieldErrors = Readonly<Record<string, string>>;

/** What a draft says: the value if every field can be used, else what is wrong with which. */
export type FormReading<T> = { readonly value: T | null; readonly errors: FieldErrors };

/** A text with the name of its field and an example of what could stand there. */
export type TypedField = { readonly name: string; readonly text: string; readonly example: string };

/** Reads the texts of a form one by one and keeps the first complaint about each field. */
export type FieldReader = {
  readonly units: UnitChoice;
  /** In the unit of the JSON (`number-kinds.ts`); undefined stands for a text that could not be read. */
  readonly read: (kind: NumberKind, field: TypedField) => number | undefined;
  readonly complain: (name: string, sentence: string) => void;
  readonly errors: () => FieldErrors;
};

export function fieldReader(units: UnitChoice): FieldReader {
  const found = new Map<string, string>();
  const complain = (name: string, sentence: string): void => {
    if (!found.has(name)) found.set(name, sentence);
  };
  return {
    units,
    read: (kind, { name, text, example }) => {
      const quantity = NUMBER_KINDS[kind].read(text, units);
      if (quantity.ok) return withoutDust(quantity.value);
      complain(name, entryProblemSentence(quantity.reason, example));
      return undefined;
    },
    complain,
    errors: () => Object.fromEntries(found),
  };
}

/** Reads a field that may stay empty; empty is undefined and no complaint. */
export function ifTyped<T>(text: string, read: () => T | undefined): T | undefined {
  return text.trim() === '' ? undefined : read();
}
