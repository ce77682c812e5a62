'use client';

import { useMemo } from 'react';
import { Button } from '@/components/ui/button';
import { Notice } from '@/components/ui/notice';
import { Section } from '@/components/ui/section';
import { type Column, Table } from '@/components/ui/table';
import { Way } from '@/components/ui/way';
import type { NightReview } from '@/lib/after/review';
import { reviewNight, startOfNight } from '@/lib/after/review-night';
import { hoursProvenance } from '@/lib/hours/provenance';
import type { Night } from '@/lib/night/night';
import { nightToReview } from '@/lib/night/night-to-review';
import type { Preferences } from '@/lib/store/records';
import type { Instant } from '@/lib/time/instant';
import type { ClockZone } from '@/lib/time/zone';
import { type AfterVoice, afterAnswers } from '@/lib/words/after';
import { type TallyWords, tallyRows } from '@/lib/words/after-rows';
import { problemSentences, problemTitle } from '@/lib/words/night-problems';
import { hoursSentenceOnPaper } from '@/lib/words/provenance';
import { together } from '@/lib/words/together';
import styles from './after.module.css';
import { RunsLookedBack } from './runs-looked-back';

type ReviewProps = {
  readonly night: Night;
  readonly end: Instant;
  readonly zone: ClockZone;
  readonly preferences: Preferences;
};

/** One finished night on a page: three answers, the runs behind them, and the night made three ways. */
export function Review({ night, end, zone, preferences }: ReviewProps) {
  const review = useMemo(() => reviewNight(nightToReview(night, end)), [night, end]);
  const voice: AfterVoice = {
    units: preferences,
    clock: { zone, from: startOfNight(night.request.runs) ?? end },
  };
  if (!review.ok) {
    const problem = { code: 'plan', problem: review.reason } as const;
    const runNames = night.request.runs.map(({ name }) => name);
    return (
      <Notice tone="caution" title={problemTitle(problem)}>
        {problemSentences(problem, { zone, units: preferences, runNames }).map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
      </Notice>
    );
  }
  return (
    <>
      <Answers review={review.value} voice={voice} />
      <RunsLookedBack review={review.value} voice={voice} />
      <Ways review={review.value} />
      <div className={styles.acts}>
        <Button onClick={() => window.print()}>Print</Button>
        <Way href="/">Go to the night</Way>
      </div>
      <p className={styles.foot}>{hoursSentenceOnPaper(hoursProvenance(night.series), voice.clock)}</p>
    </>
  );
}

type PartProps = { readonly review: NightReview; readonly voice: AfterVoice };

function Answers({ review, voice }: PartProps) {
  return (
    <div className={styles.answers}>
      {afterAnswers(review, voice).map(({ question, answer, lines }) => (
        <section key={question} className={styles.answer}>
          <h2 className={styles.question}>{question}</h2>
          <p className={styles.lead}>{answer}</p>
          {lines.map((line) => (
            <p key={line}>{line}</p>
          ))}
        </section>
      ))}
    </div>
  );
}

const WAYS: readonly Column<TallyWords>[] = [
  {
    head: 'Night',
    names: true,
    cell: ({ how, jets }) => (
      <>
        {how} <span className={styles.under}>{together(jets)}</span>
      </>
    ),
  },
  { head: 'Swaps', figures: true, cell: ({ swaps }) => swaps },
  { head: 'Runs lean', figures: true, cell: ({ lean }) => lean },
  { head: 'Runs rich', figures: true, cell: ({ rich }) => rich },
  { head: 'Power lost', figures: true, cell: ({ lost }) => lost },
];

function Ways({ review }: { readonly review: NightReview }) {
  const rows = tallyRows(review);
  if (rows.length === 0) return null;
  return (
    <Section title="The night three ways">
      <Table
        caption="Each judged by all that is known now. Lean counts what may have been lean: over the risk you accept. Power lost is against the ideal mixture; running lean gains none."
        columns={WAYS}
        rows={rows}
        rowKey={({ how }) => how}
      />
    </Section>
  );
}
