'use client';

import { type RefObject, useCallback, useEffect, useMemo, useRef, useState } from 'react';
import type { FieldErrors, FormReading } from '@/lib/fields/field-reader';
import type { Untaken, UntakenQuestion } from './untaken';
import type { DraftState } from './use-draft';

/** Nothing where all went well, else a sentence that says why it could not be saved. */
export type SaveOutcome = string | undefined;
/** Hands the finished value over; what it says stays beside the form, and the typing with it. */
export type Save<T> = (value: T) => SaveOutcome | Promise<SaveOutcome>;

/** What takes the focus as a field is left. */
type LeftFor = { readonly relatedTarget: EventTarget | null };

/** What ties a control to its place in the form. */
export type FieldBinding = {
  readonly name: string;
  readonly label: string;
  readonly error: string | undefined;
  readonly onBlur: (event?: LeftFor) => void;
};

export type FormState = {
  readonly ref: RefObject<HTMLFormElement | null>;
  readonly field: (name: string) => FieldBinding;
  /** Complaints to be seen now: of fields that were left, or of all once saving was tried. */
  readonly errors: FieldErrors;
  /** All of them, for the list at the head; null until saving was tried. */
  readonly summary: FieldErrors | null;
  readonly hasErrors: (prefix: string) => boolean;
  readonly labelOf: (name: string) => string;
  readonly submit: () => void;
  readonly saving: boolean;
  readonly refusal: string | null;
  /** Set where saving was tried with text that is in no field yet. */
  readonly question: UntakenQuestion | null;
};

type FormParts<D, T> = {
  readonly draft: DraftState<D>;
  readonly read: (draft: D) => FormReading<T>;
  readonly labelOf: (name: string) => string;
  readonly onSave: Save<T>;
  /** What was typed or pasted beside the fields and not taken; asked about before saving, never thrown away. */
  readonly untaken?: Untaken<D> | null;
};

export function useForm<D, T>({ draft, read, labelOf, onSave, untaken = null }: FormParts<D, T>): FormState {
  const ref = useRef<HTMLFormElement>(null);
  const reading = useMemo(() => read(draft.value), [read, draft.value]);
  const [left, setLeft] = useState<ReadonlySet<string>>(new Set());
  const [tries, setTries] = useState(0);
  const [saving, setSaving] = useState(false);
  const [refusal, setRefusal] = useState<string | null>(null);
  const [asked, setAsked] = useState(false);

  useEffect(() => {
    if (tries > 0) focusFirstBad(ref.current);
  }, [tries]);

  const errors = tries > 0 ? reading.errors : only(reading.errors, left);
  const leave = useCallback((name: string) => setLeft((before) => new Set([...before, name])), []);

  async function save(value: T) {
    setSaving(true);
    const refused = await onSave(value);
    setSaving(false);
    setRefusal(refused ?? null);
    if (refused === undefined) draft.forget();
  }

  function saveDraft({ value }: FormReading<T>) {
    if (value === null) setTries((count) => count + 1);
    else void save(value);
  }

  function answer(next: (draft: D) => D) {
    setAsked(false);
    draft.change(null, next);
    saveDraft(read(next(draft.value)));
  }

  return {
    ref,
    errors,
    labelOf,
    saving,
    refusal,
    question: asked && untaken !== null ? questionOf(untaken, answer) : null,
    summary: tries > 0 ? reading.errors : null,
    field: (name) => ({
      name,
      label: labelOf(name),
      error: errors[name],
      onBlur: (event) => {
        // A complaint that pushed the button away from under the finger would cost a second press.
        if (!isSubmit(event?.relatedTarget)) leave(name);
      },
    }),
    hasErrors: (prefix) => Object.keys(errors).some((name) => name.startsWith(prefix)),
    submit: () => {
      setAsked(untaken !== null);
      if (untaken === null) saveDraft(reading);
    },
  };
}

function questionOf<D>(
  { words, take, leave }: Untaken<D>,
  answer: (next: (draft: D) => D) => void,
): UntakenQuestion {
  return {
    words,
    takeAndSave: take === null ? null : () => answer(take),
    leaveAndSave: () => answer(leave),
  };
}

const isSubmit = (target: EventTarget | null | undefined): boolean =>
  target instanceof HTMLButtonElement && target.type === 'submit';

function only(errors: FieldErrors, names: ReadonlySet<string>): FieldErrors {
  return Object.fromEntries(Object.entries(errors).filter(([name]) => names.has(name)));
}

function focusFirstBad(form: HTMLFormElement | null): void {
  const bad = form?.querySelector<HTMLElement>('[aria-invalid]');
  if (bad === null || bad === undefined) form?.querySelector<HTMLElement>('[role=alert]')?.focus();
  else bad.focus();
}
