'use client';

import { useMemo } from 'react';
import { NarrowColumns } from '@/components/draft/narrow-columns';
import { useClockZone, useHours } from '@/components/store/use-clock-zone';
import { Choice } from '@/components/ui/choice';
import { Notice } from '@/components/ui/notice';
import { Section } from '@/components/ui/section';
import { asList } from '@/lib/fields/event/edit-runs';
import { eventNotes } from '@/lib/fields/event/event-notes';
import { EVENT } from '@/lib/fields/event/event-rows';
import type { TimedRun } from '@/lib/fields/event/timed-runs';
import type { ClockZone } from '@/lib/time/zone';
import { counted } from '@/lib/words/listing';
import { clockText } from '@/lib/words/times';
import type { EventFields } from './event-fields';
import { RunList } from './run-list';

/** The runs, with what stands out about them. */
export function RunFields({ draft, form, all }: Pick<EventFields, 'draft' | 'form' | 'all'>) {
  const { how } = draft.value;
  const hours = useHours();
  const zone = useClockZone(draft.value.timezone);
  const { runs, notes } = useMemo(() => eventNotes(draft.value, zone), [draft.value, zone]);
  return (
    <Section title="Runs">
      <Choice
        {...form.field('how')}
        value={how}
        options={EVENT.top.rows.how.options ?? []}
        onChange={(way) =>
          draft.change(null, (before) =>
            way === 'list' ? asList(before, hours) : { ...before, how: 'series' },
          )
        }
      />
      {how === 'series' ? (
        <NarrowColumns>{all('series')}</NarrowColumns>
      ) : (
        <RunList draft={draft} form={form} />
      )}
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
