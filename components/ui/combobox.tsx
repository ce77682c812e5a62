'use client';

import { type KeyboardEvent, useId, useState } from 'react';
import styles from './combobox.module.css';
import { Field, type FieldWords } from './field';
import fieldStyles from './field.module.css';

type ComboboxProps = FieldWords & {
  readonly name: string;
  /** Text as typed; one of the options once it was chosen. */
  readonly value: string;
  /** What fits the typed text, best first. */
  readonly options: readonly string[];
  readonly onChange: (text: string) => void;
  readonly onBlur?: () => void;
};

/** Rows shown at once; typing on narrows the rest. */
const MOST_SHOWN = 40;

type Suggestions = {
  readonly open: boolean;
  readonly active: number;
  /** Opens at the best suggestion. */
  readonly show: () => void;
  readonly hide: () => void;
  readonly onKeyDown: (event: KeyboardEvent) => void;
};

/** Which suggestion the arrow keys stand on, and what Enter and Escape do. */
function useSuggestions(shown: readonly string[], choose: (option: string) => void): Suggestions {
  const [open, setOpen] = useState(false);
  const [active, setActive] = useState(0);
  const show = () => {
    setActive(0);
    setOpen(true);
  };
  const hide = () => setOpen(false);
  function move(step: number) {
    if (open) setActive(Math.max(0, Math.min(shown.length - 1, active + step)));
    else show();
  }
  /** True where the key meant something to the list. */
  function act(key: string): boolean {
    if (key === 'ArrowDown' || key === 'ArrowUp') move(key === 'ArrowDown' ? 1 : -1);
    else if (open && key === 'Enter') choose(shown[active] ?? '');
    else if (open && key === 'Escape') hide();
    else return false;
    return true;
  }
  function onKeyDown(event: KeyboardEvent) {
    if (!act(event.key)) return;
    event.preventDefault();
    event.stopPropagation();
  }
  return { open, active, show, hide, onKeyDown };
}

/** A text field with a list of what could be meant; the list is reached by typing, arrow keys or a tap. */
export function Combobox({ label, hint, error, name, value, options, onChange, onBlur }: ComboboxProps) {
  const listId = useId();
  const shown = options.slice(0, MOST_SHOWN);
  const { open, active, show, hide, onKeyDown } = useSuggestions(shown, choose);
  function choose(option: string) {
    if (option !== '') onChange(option);
    hide();
  }
  const optionId = (index: number): string => `${listId}-${index}`;
  return (
    <Field label={label} hint={hint} error={error}>
      {(ids) => (
        <div className={styles.place}>
          <input
            {...ids}
            type="text"
            role="combobox"
            name={name}
            className={fieldStyles.control}
            autoComplete="off"
            spellCheck={false}
            aria-expanded={open}
            aria-controls={listId}
            aria-autocomplete="list"
            aria-activedescendant={open && shown.length > 0 ? optionId(active) : undefined}
            value={value}
            onChange={(event) => {
              onChange(event.target.value);
              show();
            }}
            onClick={show}
            onKeyDown={onKeyDown}
            onBlur={() => {
              hide();
              onBlur?.();
            }}
          />
          <ComboboxList
            id={listId}
            open={open}
            options={shown}
            active={active}
            {...{ optionId }}
            onChoose={choose}
          />
        </div>
      )}
    </Field>
  );
}

type ListProps = {
  readonly id: string;
  readonly open: boolean;
  readonly options: readonly string[];
  readonly active: number;
  readonly optionId: (index: number) => string;
  readonly onChoose: (option: string) => void;
};

function ComboboxList({ id, open, options, active, optionId, onChoose }: ListProps) {
  return (
    <div
      id={id}
      role="listbox"
      aria-label="Choices"
      className={styles.list}
      hidden={!open || options.length === 0}
    >
      {open
        ? options.map((option, index) => (
            // biome-ignore lint/a11y/useKeyWithClickEvents: keys are heard by the text field, which keeps the focus
            <div
              key={option}
              id={optionId(index)}
              role="option"
              tabIndex={-1}
              aria-selected={index === active}
              className={styles.option}
              // Before the field loses the focus and closes the list.
              onMouseDown={(event) => event.preventDefault()}
              onClick={() => onChoose(option)}
            >
              {option}
            </div>
          ))
        : null}
    </div>
  );
}
