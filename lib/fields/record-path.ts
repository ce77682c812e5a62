import type { Path } from '@/lib/contract/problem';

/** Every place in a record, steps parted by dots: 'baseline.air.temperatureC'. A list is one value. */
export type PathOf<J> = J extends readonly unknown[]
  ? never
  : J extends object
    ? {
        [K in keyof J & string]: K | `${K}.${PathOf<NonNullable<J[K]>>}`;
      }[keyof J & string]
    : never;

type ValueAt<J, P extends string> = P extends `${infer K}.${infer Rest}`
  ? K extends keyof J
    ? ValueAt<NonNullable<J[K]>, Rest>
    : never
  : P extends keyof J
    ? NonNullable<J[P]>
    : never;

/** The places in a record whose values are all of one kind. */
export type PathTo<J, V> = {
  [P in PathOf<J>]: [ValueAt<J, P>] extends [never] ? never : ValueAt<J, P> extends V ? P : never;
}[PathOf<J>];

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** What stands at a place of a record; undefined where nothing does. */
export function valueAt(record: unknown, at: string): unknown {
  return at.split('.').reduce<unknown>((value, step) => (isObject(value) ? value[step] : undefined), record);
}

export function numberAt(record: unknown, at: string): number | undefined {
  const value = valueAt(record, at);
  return typeof value === 'number' ? value : undefined;
}

/** The record with a value put in; without change where there is none. */
export function withValueAt(record: object, at: string, value: unknown): object {
  if (value === undefined) return record;
  const [step = '', ...rest] = at.split('.');
  if (rest.length === 0) return { ...record, [step]: value };
  const inside = valueAt(record, step);
  return { ...record, [step]: withValueAt(isObject(inside) ? inside : {}, rest.join('.'), value) };
}

/** How many of its first steps a problem's path shares with a place, where one lies in the other; else 0. */
export function sharedSteps(path: Path, at: string): number {
  const steps = at.split('.');
  const length = Math.min(steps.length, path.length);
  return steps.slice(0, length).every((step, i) => step === path[i]) ? length : 0;
}
