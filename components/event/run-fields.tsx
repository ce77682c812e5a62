'use client';

import { useMemo } from 'react';
import { NarrowColumns } from '@/components/draft/narrow-columns';
import { part } from '@/components/draft/part';
import { useClockZone } from '@/components/store/use-clock-zone';
import { Choice } from '@/components/ui/choice';
import { Notice } from '@/components/ui/notice';
import { NumberField } from '@/components/ui/number-field';
import { Section } from '@/components/ui/section';
import { TextField } from '@/components/ui/text-field';
import type { ClockZone } from '@/lib/time/zone';
import { counted } from '@/lib/words/listing';
import { clockText } from '@/lib/words/times';
import { asList } from './edit-runs';
import type { EventDraft } from './event-draft';
import { eventNotes } from './event-notes';
import { RunList } from './run-list';
import type { EventSectionProps } from './section-props';
import type { TimedRun } from './timed-runs';

const WAYS: readonly { readonly value: EventDraft['how']; readonly label: string }[] = [
  { value: 'series', label: 'First, every, how many' },
  { value: 'list', label: 'One by one' },
];

/** The runs, with what stands out about them. */
export function RunFields({ draft, form }: EventSectionProps) {
  const { how } = draft.value;
  const zone = useClockZone(draft.value.timezone);
  const { runs, notes } = useMemo(() => eventNotes(draft.value, zone), [draft.value, zone]);
  return (
    <Section title="Runs">
      <Choice
        {...form.field('how')}
        value={how}
        options={WAYS}
        onChange={(way) =>
          draft.change(null, (before) => (way === 'list' ? asList(before) : { ...before, how: way }))
        }
      />
      {how === 'series' ? <SeriesFields draft={draft} form={form} /> : <RunList draft={draft} form={form} />}
      <RunsSummary runs={runs} zone={zone} />
      {notes.length > 0 ? (
        <Notice tone="caution">
          {notes.map((note) => (
            <p key={note}>{note}</p>
          ))}
        </Notice>
      ) : null}
    </Section>
  );
}

function SeriesFields({ draft, form }: EventSectionProps) {
  const series = part(draft, 'series');
  const { first, every, count, lasting, called } = series.value;
  return (
    <NarrowColumns>
      <TextField
        {...form.field('series.first')}
        placeholder="19:00"
        inputMode="numeric"
        autoComplete="off"
        value={first}
        onChange={(text) => series.set('first', text)}
      />
      <NumberField
        {...form.field('series.every')}
        unit="min"
        value={every}
        onChange={(text) => series.set('every', text)}
      />
      <NumberField
        {...form.field('series.count')}
        value={count}
        onChange={(text) => series.set('count', text)}
      />
      <NumberField
        {...form.field('series.lasting')}
        unit="min"
        value={lasting}
        onChange={(text) => series.set('lasting', text)}
      />
      <TextField
        {...form.field('series.called')}
        maxLength={60}
        value={called}
        onChange={(text) => series.set('called', text)}
      />
    </NarrowColumns>
  );
}

/** What was understood: how many runs, when each starts and when the last one ends. */
function RunsSummary({ runs, zone }: { readonly runs: readonly TimedRun[]; readonly zone: ClockZone }) {
  const [first, last] = [runs[0], runs.at(-1)];
  if (first === undefined || last === undefined) return null;
  const clock = { zone, from: first.start };
  const starts = runs.map((run) => clockText(run.start, clock)).join(', ');
  return (
    <p>
      {counted(runs.length, 'run')}, starting at {starts}. The last ends at {clockText(last.end, clock)}.
    </p>
  );
}
