import type { UnitChoice } from '@/lib/units/choice';
import type { FieldInput, FieldOption, FieldRow, NumberKind, OwnReading } from './field-row';
import type { PathOf, PathTo } from './record-path';

type Words = FieldInput &
  Pick<FieldRow, 'label' | 'optional' | 'needed' | 'within' | 'digits' | 'unit' | 'signed'> & {
    readonly hint?: string | ((units: UnitChoice) => string);
    readonly example?: FieldRow['example'];
    readonly blank?: string;
  };

/** The unit stands at the end of a field's name in the JSON, so a kind can be held against the place it is for. */
type Places<J> = {
  readonly temperature: Exclude<Extract<PathTo<J, number>, `${string}C`>, `${string}ffsetC`>;
  readonly step: Extract<PathTo<J, number>, `${string}ffsetC`>;
  readonly pressure: Extract<PathTo<J, number>, `${string}Hpa` | `${string}.hpa`>;
  readonly elevation: Extract<PathTo<J, number>, `${string}M`>;
  readonly speed: Extract<PathTo<J, number>, `${string}Kmh`>;
  readonly percent: Extract<PathTo<J, number>, `${string}${'umidity' | 'risk'}`>;
  readonly way: never;
  readonly fall: never;
  readonly fuel: never;
  readonly turns: Extract<PathTo<J, number>, `${string}urns` | `${string}turnsPerSize`>;
  readonly number: Exclude<
    PathTo<J, number>,
    `${string}${'C' | 'Hpa' | '.hpa' | 'M' | 'Kmh' | 'umidity' | 'risk' | 'urns' | 'turnsPerSize'}`
  >;
};

type NumberRow<J, K extends NumberKind> = Words & {
  readonly at?: Places<J>[K];
  readonly example: NonNullable<FieldRow['example']>;
};

type ChoiceRow<J, V extends string> = Pick<FieldRow, 'label' | 'control'> & {
  readonly blank: NoInfer<V>;
  readonly options: readonly FieldOption<V>[];
  readonly none?: NoInfer<V>;
  readonly hint?: string | Readonly<Record<NoInfer<V>, string>>;
  readonly at?: PathTo<J, NoInfer<V>>;
};

function keptRow<J>() {
  return <V extends string = string>(blank: V, at?: PathTo<J, V>): FieldRow<V> => {
    const row = { kind: 'kept', label: '', blank } as const;
    return at === undefined ? row : { ...row, at };
  };
}

/** Makers of the rows of a form about records of one type: a place that is not there, or of another kind, does not compile. */
export function fieldRowsFor<J>() {
  const number =
    <K extends NumberKind>(kind: K) =>
    (row: NumberRow<J, K>): FieldRow<string> => ({ blank: '', ...row, kind });
  return {
    number: number('number'),
    temperature: number('temperature'),
    /** A difference of two temperatures. */
    step: number('step'),
    pressure: number('pressure'),
    elevation: number('elevation'),
    /** Typed in percent, kept as a share of one. */
    percent: number('percent'),
    speed: number('speed'),
    /** A length of road in kilometres or miles, and a speed along it in an hour. */
    way: number('way'),
    /** Kelvin over a thousand metres or feet. */
    fall: number('fall'),
    fuel: number('fuel'),
    /** Of a screw; a fraction may be typed, so the keyboard has letters. */
    turns: (row: NumberRow<J, 'turns'>) => number('turns')({ inputMode: 'text', ...row }),
    text: (
      row: Words & Pick<FieldRow, 'control'> & { readonly at?: PathTo<J, string> },
    ): FieldRow<string> => ({
      blank: '',
      ...row,
      kind: 'text',
    }),
    /** A text that its form reads by itself (`readFields`), for a place of any kind. */
    raw: (row: Words & Pick<FieldRow, 'control'> & { readonly at?: PathOf<J> }): FieldRow<string> => ({
      blank: '',
      ...row,
      kind: 'text',
    }),
    own: <V>(
      row: Words &
        Pick<FieldRow, 'control'> & {
          readonly at?: PathTo<J, V>;
          readonly read: OwnReading['read'];
          readonly write: (value: V) => string;
        },
    ): FieldRow<string> => {
      const { read, write, ...words } = row;
      return { blank: '', ...words, kind: 'own', own: { read, write: write as OwnReading['write'] } };
    },
    choice: <const V extends string>(row: ChoiceRow<J, V>): FieldRow<NoInfer<V>> => ({
      ...row,
      kind: 'choice',
    }),
    flag: (
      row: Pick<FieldRow, 'label'> & {
        readonly hint?: string;
        readonly blank?: boolean;
        readonly at?: PathTo<J, boolean>;
      },
    ): FieldRow<boolean> => ({ blank: false, ...row, kind: 'flag' }),
    /** Not shown, kept beside what is. */
    kept: keptRow<J>(),
  };
}
