import { type PressureAnswer, withPressureAnswer } from '@/lib/contract/pressure-answer';
import type { EventRecord, TypedHours } from './records';

/** The event after what was said about the pressure of its typed hours; remembered, so that nobody is asked twice. */
export function withHoursPressure(record: EventRecord, answer: PressureAnswer): EventRecord {
  const { typed } = record;
  return typed === null ? record : { ...record, typed: typedWithPressure(typed, answer) };
}

/** The typed hours of an event that is moved to a height: a pressure stood by at another one is to be asked about anew. */
export function typedHoursAt({ typed, event }: EventRecord, elevationM: number): EventRecord['typed'] {
  if (typed === null || elevationM === event.elevationM) return typed;
  const { pressureConfirmed: _, ...rest } = typed;
  return { ...rest, hours: typed.hours.map(withoutMark) };
}

function typedWithPressure(typed: TypedHours, answer: PressureAnswer): TypedHours {
  const confirmed = { ...typed, pressureConfirmed: true };
  if (answer === 'stands') return confirmed;
  const { pressure, hours } = typed;
  return {
    ...confirmed,
    hours: hours.map((hour) => withoutMark(withPressureAnswer(hour, answer))),
    pressure: pressure.kind === 'standard' ? pressure : { ...pressure, kind: answer },
  };
}

/** The answer is kept once for all hours. */
function withoutMark({
  pressureConfirmed: _,
  ...hour
}: TypedHours['hours'][number]): TypedHours['hours'][number] {
  return hour;
}
