import type { PressureGiven } from '@/lib/air/air';
import { hectopascalToPascal } from '@/lib/units/convert';
import type { Metre } from '@/lib/units/quantity';

/** The kinds of pressure that come as a number, and the field of JSON that each stands in. */
export const PRESSURE_FIELDS = {
  station: 'pressureHpa',
  altimeter: 'altimeterHpa',
  'sea-level': 'seaLevelHpa',
} as const;

type MeasuredKind = keyof typeof PRESSURE_FIELDS;
const KINDS: readonly MeasuredKind[] = ['station', 'altimeter', 'sea-level'];

/** The pressures a JSON may hold; at most one of them does. */
export type HasPressure = { readonly [F in (typeof PRESSURE_FIELDS)[MeasuredKind]]?: number | undefined };

/** A pressure as it is typed or sent: what kind it is of, and the number. */
export type MeasuredPressure = { readonly kind: MeasuredKind; readonly hpa: number };

/** The pressure that a JSON holds; null where it holds none. */
export function pressureSaid(json: HasPressure): MeasuredPressure | null {
  const said = KINDS.map((kind) => ({ kind, hpa: json[PRESSURE_FIELDS[kind]] }));
  const [first] = said.flatMap(({ kind, hpa }) => (hpa === undefined ? [] : [{ kind, hpa }]));
  return first ?? null;
}

/** The field of JSON that a kind of pressure stands in; a standard pressure comes from the elevation alone. */
export function pressureField(
  kind: PressureGiven['kind'],
): (typeof PRESSURE_FIELDS)[MeasuredKind] | 'elevationM' {
  return kind === 'standard' ? 'elevationM' : PRESSURE_FIELDS[kind];
}

/** The same pressure as JSON says it. */
export function pressureJson({ kind, hpa }: MeasuredPressure): HasPressure {
  return { [PRESSURE_FIELDS[kind]]: hpa };
}

/** The same in the core's terms; a bare kind asks for the standard atmosphere. */
export function pressureGiven(
  measured: MeasuredPressure | { readonly kind: 'standard' },
  elevation: Metre,
): PressureGiven {
  return measured.kind === 'standard'
    ? { kind: 'standard', elevation }
    : { kind: measured.kind, value: hectopascalToPascal(measured.hpa), elevation };
}
