'use client';

import { wholeOf } from '@/components/draft/part';
import { useClockFace, useClockZone } from '@/components/store/use-clock-zone';
import { Disclosure } from '@/components/ui/disclosure';
import { Notice } from '@/components/ui/notice';
import { TextArea } from '@/components/ui/text-area';
import { TextField } from '@/components/ui/text-field';
import { takePasted } from '@/lib/fields/hours/take-pasted';
import type { PasteProblem } from '@/lib/hours/pasted';
import { pasteProblemSentence, skippedLineSentence } from '@/lib/words/paste';
import { PastePreview } from './paste-preview';
import { PasteQuestions } from './paste-questions';
import type { HoursSectionProps } from './section-props';
import type { PasteState } from './use-paste';

type PastePanelProps = HoursSectionProps & {
  readonly paste: PasteState;
  /** What was just taken over, to be said aloud. */
  readonly onTaken: (words: string) => void;
};

/** A column or table from a spreadsheet, a mail or a file: pasted, checked, taken over. */
export function PastePanel({ draft, event, paste, onTaken }: PastePanelProps) {
  const whole = wholeOf(draft);
  const { pasted, units, pressureKind } = draft.value;
  const { reading, start, setStart } = paste;
  const zone = useClockZone(event.timezone);
  const face = useClockFace();
  const counted = reading?.ok ? reading.value.understood.times === 'counted-from-start' : false;
  return (
    <Disclosure summary="Paste hours from a spreadsheet" open={pasted !== ''}>
      <TextArea
        label="Pasted hours"
        hint="A column of temperatures, or a table with times; tabs, commas, semicolons and units as they come."
        rows={5}
        spellCheck={false}
        value={pasted}
        onChange={(text) => whole.set('pasted', text)}
      />
      {counted || asksForStart(reading?.ok === false ? reading.reason : null) ? (
        <TextField
          label="First line is the hour"
          placeholder={face('18:00')}
          autoComplete="off"
          value={start}
          onChange={setStart}
        />
      ) : null}
      {reading === null ? null : reading.ok ? (
        <PastePreview
          pasted={reading.value}
          units={units}
          zone={zone}
          kind={pressureKind}
          onAskAgain={Object.keys(paste.answers).length > 0 ? paste.reset : null}
          onAccept={(kind) => {
            draft.change(null, (before) => takePasted(before, reading.value, kind));
            onTaken(`${reading.value.rows.length} hours taken over. Undo brings back what stood before.`);
            paste.reset();
          }}
        />
      ) : (
        <PasteTrouble problem={reading.reason} paste={paste} />
      )}
    </Disclosure>
  );
}

function asksForStart(problem: PasteProblem | null): boolean {
  if (problem === null) return false;
  return (
    problem.code === 'not-a-clock' ||
    (problem.code === 'ask' && problem.questions.some(({ code }) => code === 'no-times'))
  );
}

function PasteTrouble({ problem, paste }: { readonly problem: PasteProblem; readonly paste: PasteState }) {
  if (problem.code === 'ask') return <PasteQuestions questions={problem.questions} answer={paste.answer} />;
  return (
    <Notice tone="caution" title={pasteProblemSentence(problem)}>
      {problem.code === 'no-hours' ? (
        <ul>
          {problem.skipped.map((line) => (
            <li key={line.line}>{skippedLineSentence(line)}</li>
          ))}
        </ul>
      ) : null}
    </Notice>
  );
}
