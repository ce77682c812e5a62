import type { ChangeDraft } from './use-draft';

/** One group of a draft's fields, and the way to set one of them. */
export type Part<P> = {
  readonly value: P;
  readonly set: <K extends keyof P & string>(key: K, value: P[K]) => void;
  /** Several at once, as one step of undo. */
  readonly setAll: (values: Partial<P>) => void;
};

type HasChange<D> = { readonly value: D; readonly change: ChangeDraft<D> };

export function part<D, G extends keyof D & string>({ value, change }: HasChange<D>, group: G): Part<D[G]> {
  return {
    value: value[group],
    set: (key, next) =>
      change(`${group}.${key}`, (draft) => ({ ...draft, [group]: { ...draft[group], [key]: next } })),
    setAll: (values) => change(null, (draft) => ({ ...draft, [group]: { ...draft[group], ...values } })),
  };
}

/** The fields that stand in the draft itself. */
export function wholeOf<D>({ value, change }: HasChange<D>): Part<D> {
  return {
    value,
    set: (key, next) => change(key, (draft) => ({ ...draft, [key]: next })),
    setAll: (values) => change(null, (draft) => ({ ...draft, ...values })),
  };
}
