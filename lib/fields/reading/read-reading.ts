import { airFrom } from '@/lib/air/air-from';
import { type ReadingJson, readingSchema } from '@/lib/contract/event';
import { type FormReading, fieldReader } from '@/lib/fields/field-reader';
import { numberAt } from '@/lib/fields/record-path';
import { fieldAt, readFields } from '@/lib/fields/table-values';
import type { Instant } from '@/lib/time/instant';
import { isoLocal } from '@/lib/time/zone';
import { celsiusToKelvin, hectopascalToPascal, pascalToHectopascal } from '@/lib/units/convert';
import { type Metre, ratio } from '@/lib/units/quantity';
import { airProblemSentence } from '@/lib/words/air-problems';
import { READING, type ReadingDraft } from './reading-rows';
import { readingTime, readingTimeWords } from './reading-time';

type ReadingContext = {
  readonly now: Instant;
  readonly zone: string;
  readonly elevation: Metre;
  readonly id: string;
  readonly was: Instant | null;
};

/** Air of usual dampness, where the humidity was not read: it moves a pressure by less than a tenth of a hPa. */
const USUAL_HUMIDITY = 0.8;

/** What the form says: a reading with its station pressure, or what is wrong with which field. */
export function readReading(draft: ReadingDraft, context: ReadingContext): FormReading<ReadingJson> {
  const reader = fieldReader(draft.units);
  const read = readFields(READING, draft, reader, {
    clock: () => {
      const time = readingTime(draft.clock, context);
      if (time.ok) return isoLocal(time.value, context.zone);
      reader.complain('clock', readingTimeWords(time.reason));
      return undefined;
    },
  });
  const station = stationHpa(draft, read, context);
  if (typeof station === 'string') reader.complain('pressure', station);
  const errors = reader.errors();
  if (Object.keys(errors).length > 0) return { value: null, errors };
  const pressure = station === undefined ? {} : { pressureHpa: station };
  const parsed = readingSchema.safeParse({ id: context.id, ...read, ...pressure });
  if (parsed.success) return { value: parsed.data, errors };
  const place = (parsed.error.issues[0]?.path ?? []).map((step) => String(step));
  const name = fieldAt(READING, draft, place) ?? 'temperature';
  return {
    value: null,
    errors: { [name]: 'That is outside what any air can be. Check the number and its unit.' },
  };
}

/** Station pressure [hPa] from the pressure and its kind, or a sentence that says why it cannot be. */
function stationHpa(
  { pressureKind, units }: ReadingDraft,
  read: object,
  { elevation }: ReadingContext,
): number | string | undefined {
  const [typed, celsius] = [numberAt(read, 'pressureHpa'), numberAt(read, 'temperatureC')];
  if (pressureKind === 'none' || typed === undefined || celsius === undefined) return undefined;
  const air = airFrom({
    temperature: celsiusToKelvin(celsius),
    pressure: { kind: pressureKind, value: hectopascalToPascal(typed), elevation },
    humidity: { kind: 'relative', value: ratio(numberAt(read, 'relativeHumidity') ?? USUAL_HUMIDITY) },
  });
  return air.ok ? pascalToHectopascal(air.value.pressure) : airProblemSentence(air.reason, units);
}
