// @vitest-environment jsdom
import { cleanup, fireEvent, render, screen } from '@testing-library/react';
import type { ReactElement } from 'react';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { BaselineForm } from '@/components/baseline/baseline-form';
import { PullForm } from '@/components/compare/pull-form';
import { EventEditor } from '@/components/event/event-editor';
import { HardwareForm } from '@/components/hardware/hardware-form';
import { HoursEditor } from '@/components/hours/hours-editor';
import { LogEntryForm } from '@/components/log/log-entry-form';
import { MachineEditor } from '@/components/machine/machine-editor';
import { ReadingForm } from '@/components/reading/reading-form';
import { nightFrom } from '@/lib/night/night';
import { expectOk } from '@/lib/result/result';
import { newMachineRecord } from '@/lib/store/new-machine-record';
import { US_UNITS } from '@/lib/units/choice';
import { planNight } from '@/tests/support/plan-night';
import { BEFORE_THE_FIRST_RUN, demoRecords } from '../night/night-case';
import { FULL_MACHINE } from './machines';

beforeEach(() => localStorage.clear());
afterEach(cleanup);

const records = demoRecords(BEFORE_THE_FIRST_RUN);
const { event } = records.event.value;
const night = expectOk(nightFrom(records));
const plan = expectOk(planNight(night, BEFORE_THE_FIRST_RUN));
const machine = { ...records.machine, value: newMachineRecord(FULL_MACHINE) };
const none = () => undefined;
const units = US_UNITS;

/** Every editor, with content in its fields and with none. */
const EDITORS: Readonly<Record<string, ReactElement>> = {
  'a machine': <MachineEditor id="m" initial={FULL_MACHINE} units={units} onSave={none} onCancel={none} />,
  'a new machine': <MachineEditor id="new" initial={null} units={units} onSave={none} onCancel={none} />,
  'an event': <EventEditor id="e" initial={event} units={units} onSave={none} onCancel={none} />,
  'a new event': <EventEditor id="new" initial={null} units={units} onSave={none} onCancel={none} />,
  hours: (
    <HoursEditor
      id="h"
      initial={records.event.value.typed}
      event={event}
      units={units}
      onSave={none}
      onCancel={none}
    />
  ),
  'new hours': (
    <HoursEditor id="n" initial={null} event={event} units={units} onSave={none} onCancel={none} />
  ),
  'a reading': (
    <ReadingForm
      planned={{
        night,
        plan,
        now: BEFORE_THE_FIRST_RUN,
        voice: { zone: night.zone, units, now: BEFORE_THE_FIRST_RUN },
      }}
      units={units}
      id="r"
      initial={null}
      onSave={async () => undefined}
      onCancel={none}
    />
  ),
  'a run of the log': (
    <LogEntryForm
      id="l"
      before={null}
      machines={[machine]}
      units={units}
      today="2027-01-16"
      zone={night.zone}
      onSave={none}
      onCancel={none}
    />
  ),
  'a baseline': (
    <BaselineForm
      machineId="m"
      machine={FULL_MACHINE}
      log={[]}
      units={units}
      today="2027-01-16"
      onSave={none}
      onCancel={none}
    />
  ),
  'a changed part': <HardwareForm today="2027-01-16" onSave={none} onCancel={none} />,
  'a pull': (
    <PullForm
      comparisonId="c"
      machine={machine.value}
      measure="power"
      log={[]}
      units={units}
      side="before"
      onSave={none}
      onCancel={none}
    />
  ),
};

type TextControl = HTMLInputElement | HTMLTextAreaElement;
const TEXTS = 'input:not([type=radio]):not([type=checkbox]):not([type=file]):not([type=range]), textarea';
const textFields = (): readonly TextControl[] => [...document.querySelectorAll<TextControl>(TEXTS)];

/** Halves of what people type, so that a Backspace is met in the middle of everything. */
const HALVES = ['-', '7:45 p', '1e', '“', '400x', '19:4', 'America/', '-12,'];
const isPicker = ({ type }: TextControl): boolean => type === 'date' || type === 'time';

/** What a Backspace at the end of a field does to it; a date or time picker is emptied by it. */
function backspace(field: TextControl): void {
  const typed = isPicker(field) ? '' : field.value.slice(0, -1);
  fireEvent.keyDown(field, { key: 'Backspace' });
  if (typed !== field.value) fireEvent.change(field, { target: { value: typed } });
}

/** One field with its content, with half a word, and with nothing. */
function pressIn(field: TextControl, half: string): void {
  backspace(field);
  if (!isPicker(field)) {
    fireEvent.change(field, { target: { value: `${half}x` } });
    backspace(field);
  }
  fireEvent.change(field, { target: { value: '' } });
  backspace(field);
  fireEvent.blur(field);
}

/** Ways of an editor that show other fields: every choice and every switch, one after the other. */
const choices = (): readonly HTMLInputElement[] => [
  ...document.querySelectorAll<HTMLInputElement>(
    'input[type=radio]:not(:checked), input[type=checkbox]:not(:checked)',
  ),
];

describe('one Backspace in every text field', () => {
  it.each(Object.entries(EDITORS))('of %s throws nothing', { timeout: 120_000 }, (_, editor) => {
    render(editor);
    const form = screen.getByRole('form');
    const seen = new Set<string>();
    const walk = () => {
      for (const field of textFields()) {
        const name = field.name || field.id;
        if (!seen.has(name)) pressIn(field, HALVES[seen.size % HALVES.length] ?? '');
        seen.add(name);
      }
      expect(form.isConnected).toBe(true);
    };
    walk();
    for (const choice of choices()) {
      if (!choice.isConnected) continue;
      fireEvent.click(choice);
      walk();
    }
    expect(seen.size).toBeGreaterThan(0);
  });
});
