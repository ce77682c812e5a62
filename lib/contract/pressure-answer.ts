import { type HasPressure, pressureJson, pressureSaid } from './pressure';

/** What a person said about a pressure in doubt: it stands, or its number is of another kind. */
export type PressureAnswer = 'stands' | 'station' | 'sea-level';

/** An air or an hour with the answer in it. The number stays as typed; only what it is called changes. */
export function withPressureAnswer<T extends HasPressure>(json: T, answer: PressureAnswer): T {
  const said = pressureSaid(json);
  if (said === null) return json;
  if (answer === 'stands') return { ...json, pressureConfirmed: true };
  const { pressureHpa: _, altimeterHpa: __, seaLevelHpa: ___, ...rest } = json;
  // The rest of T and one of its pressures, which all are optional: a T again.
  return { ...rest, ...pressureJson({ ...said, kind: answer }), pressureConfirmed: true } as unknown as T;
}
