/** The pressures a JSON may hold; at most one of them does. */
type HasPressure = {
  readonly pressureHpa?: number | undefined;
  readonly altimeterHpa?: number | undefined;
  readonly seaLevelHpa?: number | undefined;
  readonly pressureConfirmed?: boolean | undefined;
};

/** What a person said about a pressure in doubt: it stands, or its number is of another kind. */
export type PressureAnswer = 'stands' | 'station' | 'sea-level';

/** An air or an hour with the answer in it. The number stays as typed; only what it is called changes. */
export function withPressureAnswer<T extends HasPressure>(json: T, answer: PressureAnswer): T {
  const { pressureHpa, altimeterHpa, seaLevelHpa, pressureConfirmed: _, ...rest } = json;
  const number = pressureHpa ?? altimeterHpa ?? seaLevelHpa;
  if (number === undefined) return json;
  if (answer === 'stands') return { ...json, pressureConfirmed: true };
  const key = answer === 'station' ? 'pressureHpa' : 'seaLevelHpa';
  // The rest of T and one of its pressures, which all are optional: a T again.
  return { ...rest, [key]: number, pressureConfirmed: true } as unknown as T;
}
