import { type FormReading, fieldReader, ifTyped } from '@/components/draft/field-reader';
import { withoutGaps } from '@/components/draft/without-gaps';
import { airFrom } from '@/lib/air/air-from';
import { type ReadingJson, readingSchema } from '@/lib/contract/event';
import type { Instant } from '@/lib/time/instant';
import { isoLocal } from '@/lib/time/zone';
import { celsiusToKelvin, hectopascalToPascal, pascalToHectopascal } from '@/lib/units/convert';
import { type Metre, ratio } from '@/lib/units/quantity';
import { airProblemSentence } from '@/lib/words/air-problems';
import type { ReadingDraft } from './reading-draft';
import { readingTime, readingTimeWords } from './reading-time';

export type ReadingContext = {
  readonly now: Instant;
  readonly zone: string;
  readonly elevation: Metre;
  readonly id: string;
  readonly was: Instant | null;
};

/** Air of usual dampness, where the humidity was not read: it moves a pressure by less than a tenth of a hPa. */
const USUAL_HUMIDITY = ratio(0.8);

/** What the form says: a reading with its station pressure, or what is wrong with which field. */
export function readReading(draft: ReadingDraft, context: ReadingContext): FormReading<ReadingJson> {
  const reader = fieldReader(draft.units);
  const temperatureC = reader.temperatureC({
    name: 'temperature',
    text: draft.temperature,
    example: draft.units.temperature === 'F' ? '14' : '-10',
  });
  const time = readingTime(draft.clock, context);
  if (!time.ok) reader.complain('clock', readingTimeWords(time.reason));
  const relativeHumidity = ifTyped(draft.humidity, () =>
    reader.ratio({ name: 'humidity', text: draft.humidity, example: '80' }),
  );
  const typedHpa =
    draft.pressureKind === 'none'
      ? undefined
      : reader.pressureHpa({
          name: 'pressure',
          text: draft.pressure,
          example: draft.units.pressure === 'inHg' ? '28.60' : '968',
        });
  const pressureHpa =
    typedHpa === undefined || temperatureC === undefined
      ? undefined
      : stationHpa(draft, { typedHpa, temperatureC, relativeHumidity }, context);
  if (typeof pressureHpa === 'string') reader.complain('pressure', pressureHpa);
  const errors = reader.errors();
  if (!time.ok || Object.keys(errors).length > 0) return { value: null, errors };
  const parsed = readingSchema.safeParse(
    withoutGaps({
      id: context.id,
      time: isoLocal(time.value, context.zone),
      temperatureC,
      pressureHpa,
      relativeHumidity,
    }),
  );
  if (parsed.success) return { value: parsed.data, errors };
  const field = parsed.error.issues[0]?.path[0] === 'pressureHpa' ? 'pressure' : 'temperature';
  return {
    value: null,
    errors: { [field]: 'That is outside what any air can be. Check the number and its unit.' },
  };
}

type Typed = {
  readonly typedHpa: number;
  readonly temperatureC: number;
  readonly relativeHumidity: number | undefined;
};

/** Station pressure [hPa] from the pressure and its kind, or a sentence that says why it cannot be. */
function stationHpa(
  { pressureKind, units }: ReadingDraft,
  { typedHpa, temperatureC, relativeHumidity }: Typed,
  { elevation }: ReadingContext,
): number | string | undefined {
  if (pressureKind === 'none') return undefined;
  const air = airFrom({
    temperature: celsiusToKelvin(temperatureC),
    pressure: { kind: pressureKind, value: hectopascalToPascal(typedHpa), elevation },
    humidity: {
      kind: 'relative',
      value: relativeHumidity === undefined ? USUAL_HUMIDITY : ratio(relativeHumidity),
    },
  });
  return air.ok ? pascalToHectopascal(air.value.pressure) : airProblemSentence(air.reason, units);
}
