import type { Result } from '@/lib/result/result';
import type { UnitChoice } from '@/lib/units/choice';
import { kelvinToCelsius, pascalToHectopascal } from '@/lib/units/convert';
import {
  readElevation,
  readNumber,
  readPercent,
  readPressure,
  readTemperature,
  readTemperatureStep,
} from '@/lib/units/entry';
import type { EntryProblem } from '@/lib/units/entry-number';
import { withoutDust } from '@/lib/units/entry-text';
import { entryProblemSentence } from '@/lib/words/entry-problems';

/** One sentence per field that cannot be used as it stands, by the field's name, in the order of the form. */
export type FieldErrors = Readonly<Record<string, string>>;

/** What a draft says: the value if every field can be used, else what is wrong with which. */
export type FormReading<T> = { readonly value: T | null; readonly errors: FieldErrors };

/** A text with the name of its field and an example of what could stand there. */
export type TypedField = { readonly name: string; readonly text: string; readonly example: string };

type ReadField = (field: TypedField) => number | undefined;

/**
 * Reads the texts of a form one by one and keeps the first complaint about each field. Numbers come back in the
 * units of the JSON (°C, hPa, m, ratio); undefined stands for a field that could not be read.
 */
export type FieldReader = {
  readonly temperatureC: ReadField;
  readonly temperatureStepC: ReadField;
  readonly pressureHpa: ReadField;
  readonly elevationM: ReadField;
  /** Percent as typed, as a ratio. */
  readonly ratio: ReadField;
  readonly number: ReadField;
  readonly complain: (name: string, sentence: string) => void;
  readonly errors: () => FieldErrors;
};

export function fieldReader(units: UnitChoice): FieldReader {
  const found = new Map<string, string>();
  const complain = (name: string, sentence: string): void => {
    if (!found.has(name)) found.set(name, sentence);
  };
  function reading<Q extends number>(
    read: (text: string) => Result<Q, EntryProblem>,
    toJson: (quantity: Q) => number,
  ): ReadField {
    return ({ name, text, example }) => {
      const quantity = read(text);
      if (quantity.ok) return withoutDust(toJson(quantity.value));
      complain(name, entryProblemSentence(quantity.reason, example));
      return undefined;
    };
  }
  const asItIs = (value: number): number => value;
  return {
    temperatureC: reading((text) => readTemperature(text, units.temperature), kelvinToCelsius),
    temperatureStepC: reading((text) => readTemperatureStep(text, units.temperature), asItIs),
    pressureHpa: reading((text) => readPressure(text, units.pressure), pascalToHectopascal),
    elevationM: reading((text) => readElevation(text, units.elevation), asItIs),
    ratio: reading(readPercent, asItIs),
    number: reading(readNumber, asItIs),
    complain,
    errors: () => Object.fromEntries(found),
  };
}

/** Reads a field that may stay empty; empty is undefined and no complaint. */
export function ifTyped<T>(text: string, read: () => T | undefined): T | undefined {
  return text.trim() === '' ? undefined : read();
}
