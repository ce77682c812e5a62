import { type PressureAnswer, withPressureAnswer } from '@/lib/contract/pressure-answer';
import type { EventRecord, TypedHours } from './records';

/** The event after what was said about the pressure of its typed hours; remembered, so that nobody is asked twice. */
export function withHoursPressure(record: EventRecord, answer: PressureAnswer): EventRecord {
  const { typed } = record;
  return typed === null ? record : { ...record, typed: typedWithPressure(typed, answer) };
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
