'use client';

import { useClockZone } from '@/components/store/use-clock-zone';
import { usePreferences } from '@/components/store/use-preferences';
import { useRecord } from '@/components/store/use-table';
import { Section } from '@/components/ui/section';
import { turnBack, useHash } from '@/components/ui/use-hash';
import { Way } from '@/components/ui/way';
import type { EventRecord, MachineRecord, Stored, TableValue } from '@/lib/store/records';
import { eventSummary, hoursSummary, machineSummary } from '@/lib/words/setup-summary';
import { together } from '@/lib/words/together';
import { ChooseNight } from './choose-night';
import { EditEvent, EditHours, EditMachine } from './edit-dialogs';
import { NewNight } from './new-night';
import styles from './setup-section.module.css';

type SetupProps = {
  readonly event: Stored<EventRecord> | null;
  readonly machine: Stored<MachineRecord> | null;
};

const openHours = (hasPlace: boolean) => {
  window.location.hash = hasPlace ? 'weather' : 'hours';
};

/** What the plan is made from, and the forms to change it. */
export function SetupSection({ event, machine }: SetupProps) {
  const form = useHash();
  const { preferences } = usePreferences();
  const { temperature, pressure, elevation } = preferences;
  const units = { temperature, pressure, elevation };
  const clock = useClockZone(event?.value.event.timezone ?? 'UTC');
  return (
    <Section title="Set-up" id="set-up">
      <dl className={styles.list}>
        {event === null ? null : (
          <>
            <Row title="Event" text={eventSummary(event.value, units, clock)} form="event" />
            <Row title="Hours" text={hoursSummary(event.value, units, clock)} form="hours" />
          </>
        )}
        {machine === null ? null : (
          <Row title="Machine" text={machineSummary(machine.value, units)} form="machine" />
        )}
      </dl>
      <Way kind="firm" href="#new-night">
        {event === null || event.value.demo ? 'Start my own night' : 'Another night'}
      </Way>
      <ChooseNight event={event} machine={machine} />
      <OpenForm {...{ form, event, machine, units }} />
    </Section>
  );
}

type RowProps = { readonly title: string; readonly text: string; readonly form: string };

function Row({ title, text, form }: RowProps) {
  return (
    <div className={styles.row}>
      <dt className={styles.title}>{title}</dt>
      <dd className={styles.text}>{together(text)}</dd>
      <dd>
        <Way href={`#${form}`} aria-label={`Change: ${title}`}>
          Change
        </Way>
      </dd>
    </div>
  );
}

type OpenFormProps = SetupProps & {
  readonly form: string;
  readonly units: Parameters<typeof eventSummary>[1];
};

/** As it is stored now: what a form changes may be newer than what stands in the plan. */
function useNewest<T extends 'events' | 'machines'>(table: T, planned: Stored<TableValue[T]> | null) {
  const record = useRecord(table, planned?.id ?? null);
  return record.status === 'there' ? record.stored : planned;
}

function OpenForm({ form, units, ...planned }: OpenFormProps) {
  const event = useNewest('events', planned.event);
  const machine = useNewest('machines', planned.machine);
  /** Back to this section; the address tells which form is open, so that the back button closes it. */
  const close = () => turnBack(form, 'set-up');
  if (form === 'new-night') return <NewNight units={units} onClose={close} onMade={openHours} />;
  if (form === 'machine' && machine !== null)
    return <EditMachine stored={machine} units={units} onClose={close} />;
  if (event === null) return null;
  if (form === 'event') return <EditEvent stored={event} units={units} onClose={close} />;
  if (form === 'hours') return <EditHours stored={event} units={units} onClose={close} />;
  return null;
}
