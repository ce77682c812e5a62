import type { PressureKind } from '@/lib/air/air';
import type { PressureAnswer } from '@/lib/contract/pressure-answer';

/** A pressure in a form, and what was last stood by. */
type TypedPressure = {
  readonly pressureKind: PressureKind;
  readonly pressure: string;
  readonly elevation: string;
  /** The pressure, kind and height a person stood by, as one text: another number is asked about anew. Empty: none. */
  readonly pressureConfirmed: string;
};

/** What a person stands by with an answer: the number, its kind and where it was read. */
export function pressureKey({
  pressureKind,
  pressure,
  elevation,
}: Omit<TypedPressure, 'pressureConfirmed'>): string {
  return `${pressureKind} ${pressure.trim()} ${elevation.trim()}`;
}

export function isPressureConfirmed(typed: TypedPressure): boolean {
  return typed.pressureKind !== 'standard' && typed.pressureConfirmed === pressureKey(typed);
}

/** What an answer sets in a form. */
export function answeredPressure(
  typed: TypedPressure,
  answer: PressureAnswer,
): Pick<TypedPressure, 'pressureKind' | 'pressureConfirmed'> {
  const pressureKind = answer === 'stands' ? typed.pressureKind : answer;
  return { pressureKind, pressureConfirmed: pressureKey({ ...typed, pressureKind }) };
}
