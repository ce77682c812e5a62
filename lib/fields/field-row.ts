import type { Result } from '@/lib/result/result';
import type { UnitChoice } from '@/lib/units/choice';

/** Kinds of numbers as they are typed; each has its unit in the JSON (`number-kinds.ts`). */
export type NumberKind =
  | 'number'
  | 'temperature'
  | 'step'
  | 'pressure'
  | 'elevation'
  | 'percent'
  | 'speed'
  | 'way'
  | 'fall'
  | 'turns'
  | 'fuel';

/** `own` is a text with a reader of its own; `kept` is never shown. */
export type FieldKind = NumberKind | 'text' | 'own' | 'choice' | 'flag' | 'kept';

export type FieldOption<V extends string = string> = { readonly value: V; readonly label: string };

/** How a control takes what is typed, beside its kind. */
export type FieldInput = {
  /** A browser's own clock field may show another clock than the page (12 or 24 hours), so times are texts. */
  readonly type?: 'date' | 'search';
  readonly placeholder?: string;
  /** A clock time that could stand there, of the 24-hour clock; shown as the person reads clocks. */
  readonly clock?: string;
  readonly inputMode?: 'text' | 'numeric';
  readonly autoComplete?: 'off';
  readonly maxLength?: number;
  readonly rows?: number;
};

/** One field: everything that the draft, its reading, its control and the list of complaints know of it. */
export type FieldRow<V extends string | boolean = string | boolean> = FieldInput & {
  readonly kind: FieldKind;
  readonly label: string;
  /** What stands in it before anything was typed. */
  readonly blank: V;
  /** Where its value stands in the record, steps parted by dots; absent: the form reads it by itself. */
  readonly at?: string;
  /** Standing help; where it names a measure, in the person's units; for a choice also one sentence for each of its values. */
  readonly hint?: string | ((units: UnitChoice) => string) | Readonly<Record<string, string>>;
  /** What could stand there, told where what stands there cannot be read. */
  readonly example?: string | ((units: UnitChoice) => string);
  /** A unit that no choice of units changes. */
  readonly unit?: string;
  /** Has a key for the sign; temperatures do unless told otherwise. */
  readonly signed?: boolean;
  /** May stay empty: then there is no value. */
  readonly optional?: boolean;
  /** Said where a text is empty. */
  readonly needed?: string;
  /** Of the value as it is kept, with what is said outside. */
  readonly within?: { readonly least: number; readonly most: number; readonly words: string };
  /** Decimals of the text that a kept value becomes. */
  readonly digits?: number;
  readonly options?: readonly FieldOption[];
  /** The choice that stands for no value. */
  readonly none?: V;
  /** A list instead of buttons, several lines instead of one. */
  readonly control?: 'select' | 'area';
  readonly own?: OwnReading;
};

/** Reads what is typed to a value, or a sentence that says what is wrong; and writes the value back. */
export type OwnReading = {
  readonly read: (text: string, units: UnitChoice) => Result<unknown, string>;
  readonly write: (value: never, units: UnitChoice) => string;
};

export type FieldRows = Readonly<Record<string, FieldRow>>;

/** What a form holds of some rows: the texts, choices and switches by their names. */
export type ValuesOf<R extends FieldRows> = { readonly [K in keyof R]: R[K]['blank'] };

/** What hangs on other fields of the same group. */
export type Hangs<R extends FieldRows> = {
  /** The switch that the others are asked with, and where the record has the group; off: it has none. */
  readonly switch?: { readonly key: keyof R & string; readonly at: string };
  /** A field is shown and read only then. */
  readonly asked?: { readonly [K in keyof R]?: (values: ValuesOf<R>) => boolean };
  /** A field whose kind another field chooses: the row it is read and shown by, null where it is not asked. */
  readonly as?: { readonly [K in keyof R]?: (values: ValuesOf<R>) => FieldRow<string> | null };
  /** What else a change of the field sets, in one step. */
  readonly sets?: {
    readonly [K in keyof R]?: (value: R[K]['blank'], units: UnitChoice) => Partial<ValuesOf<R>>;
  };
};

type By<F> = Readonly<Record<string, F | undefined>>;

/** Rows that stand together in a form's draft, under one name. */
export type FieldGroup<R extends FieldRows = FieldRows> = {
  readonly rows: R;
  readonly switch: { readonly key: string; readonly at: string } | null;
  // The three are typed where the group is made and are given its own values only.
  readonly asked: By<(values: never) => boolean>;
  readonly as: By<(values: never) => FieldRow<string> | null>;
  readonly sets: By<(value: never, units: UnitChoice) => object>;
};

export function groupOf<R extends FieldRows>(rows: R, hangs: Hangs<R> = {}): FieldGroup<R> {
  const { asked = {}, as = {}, sets = {} } = hangs;
  return { rows, switch: hangs.switch ?? null, asked, as, sets };
}

/** A form's groups by the name of their part of the draft; `top` stands in the draft itself. */
export type FieldTable = Readonly<Record<string, FieldGroup>> & { readonly top: FieldGroup };

/** The draft of a form: what bare numbers in it mean, and what was typed. */
export type DraftOf<T extends FieldTable> = { readonly units: UnitChoice } & ValuesOf<T['top']['rows']> & {
    readonly [G in Exclude<keyof T, 'top'>]: ValuesOf<T[G]['rows']>;
  };

/** 'name', 'limits.risk': what a field of a form is called by. */
export type FieldName<T extends FieldTable> =
  | (keyof T['top']['rows'] & string)
  | { [G in Exclude<keyof T & string, 'top'>]: `${G}.${keyof T[G]['rows'] & string}` }[Exclude<
      keyof T & string,
      'top'
    >];
