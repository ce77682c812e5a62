'use client';

import { useTable } from '@/components/store/use-table';
import { useWrite } from '@/components/store/use-write';
import { Button } from '@/components/ui/button';
import { Section } from '@/components/ui/section';
import { ButtonRow } from '@/components/ui/stack';
import { everyRun, withEverybodyLater, withEveryRunAsBefore } from '@/lib/night/everybody-later';
import type { Instant } from '@/lib/time/instant';
import { BOARD_WORDS, everybodyLaterText } from '@/lib/words/board-page';

/** As nights run late: judgement. */
const STEPS = [5, 10, 20, 30] as const;

/** "We run late" for everybody on a board: changes the night it was posted from, which then goes out by itself. */
export function RunningLate({ boardId, now }: { readonly boardId: string; readonly now: Instant }) {
  const write = useWrite();
  const event = useTable('events')?.find(({ value }) => value.board?.id === boardId);
  return (
    <Section title={BOARD_WORDS.late}>
      {event === undefined ? (
        <p>{BOARD_WORDS.lateElsewhere}</p>
      ) : (
        <ButtonRow>
          {STEPS.map((minutes) => (
            <Button
              key={minutes}
              size="large"
              onClick={() =>
                void write.change(
                  { table: 'events', id: event.id },
                  (record) => withEverybodyLater(record, { now, minutes }),
                  everybodyLaterText(minutes),
                  { part: everyRun, back: withEveryRunAsBefore },
                )
              }
            >
              {minutes} min later
            </Button>
          ))}
        </ButtonRow>
      )}
    </Section>
  );
}
