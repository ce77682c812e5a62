'use client';

import type { ReactNode } from 'react';
import { Button } from '@/components/ui/button';
import { Notice } from '@/components/ui/notice';
import styles from './editor-form.module.css';
import type { DraftState } from './use-draft';
import type { FormState } from './use-form';

type EditorFormProps = {
  /** Says what the form is for, to a screen reader. */
  readonly title: string;
  readonly form: FormState;
  readonly draft: Pick<DraftState<unknown>, 'undo' | 'canUndo' | 'broughtBack' | 'startOver'>;
  readonly saveLabel: string;
  readonly onCancel: () => void;
  readonly children: ReactNode;
};

/** What every editor has around its fields: the way back, what is wrong, and saving. */
export function EditorForm({ title, form, draft, saveLabel, onCancel, children }: EditorFormProps) {
  return (
    <form
      ref={form.ref}
      className={styles.form}
      aria-label={title}
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        form.submit();
      }}
    >
      {draft.broughtBack ? (
        <Notice
          title="What you typed last time and did not save is back."
          act={<Button onClick={draft.startOver}>Start over</Button>}
        />
      ) : null}
      {form.refusal === null ? null : (
        <Notice tone="danger" title="Not saved.">
          <p>{form.refusal}</p>
        </Notice>
      )}
      <ErrorSummary form={form} />
      {children}
      <NotTakenYet form={form} />
      <div className={styles.acts}>
        <Button type="submit" kind="primary" disabled={form.saving}>
          {form.saving ? 'Saving…' : saveLabel}
        </Button>
        <Button onClick={draft.undo} disabled={!draft.canUndo}>
          Undo
        </Button>
        <Button kind="quiet" onClick={onCancel}>
          Cancel
        </Button>
      </div>
    </form>
  );
}

/** Stands beside the button that was pressed: what was pasted or typed is taken or left by the person, not by the form. */
function NotTakenYet({ form: { question, saving } }: { readonly form: FormState }) {
  if (question === null) return null;
  const { words, takeAndSave, leaveAndSave } = question;
  return (
    <Notice
      tone="danger"
      title="Not saved yet."
      act={
        <>
          {takeAndSave === null ? null : (
            <Button kind="primary" disabled={saving} onClick={takeAndSave}>
              Take it over and save
            </Button>
          )}
          <Button disabled={saving} onClick={leaveAndSave}>
            Save without it
          </Button>
        </>
      }
    >
      <p>{words}</p>
    </Notice>
  );
}

/** After a try to save: every complaint at the head, each leading to its field. */
function ErrorSummary({ form }: { readonly form: FormState }) {
  const errors = Object.entries(form.summary ?? {});
  if (errors.length === 0) return null;
  const title = errors.length === 1 ? 'One thing to put right.' : `${errors.length} things to put right.`;
  return (
    <Notice tone="danger" title={title}>
      <ul className={styles.list}>
        {errors.map(([name, sentence]) => (
          <li key={name}>
            <button type="button" className={styles.link} onClick={() => focusField(form, name)}>
              {form.labelOf(name)}
            </button>
            {`: ${sentence}`}
          </li>
        ))}
      </ul>
    </Notice>
  );
}

function focusField(form: FormState, name: string): void {
  const field = form.ref.current?.elements.namedItem(name);
  if (field instanceof HTMLElement) field.focus();
}
