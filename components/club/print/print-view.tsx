'use client';

import { useMemo, useState } from 'react';
import { clubNames } from '@/components/club/names';
import type { ClubViewProps } from '@/components/club/view-props';
import { Button } from '@/components/ui/button';
import { classNames } from '@/components/ui/class-names';
import { Notice } from '@/components/ui/notice';
import { Select } from '@/components/ui/select';
import { ButtonRow } from '@/components/ui/stack';
import type { Briefing } from '@/lib/club/briefing';
import { listing } from '@/lib/words/listing';
import { BriefingPrint } from './briefing-print';
import { PAPERS, type Paper } from './paper';
import styles from './print.module.css';
import { RacerSheet } from './racer-sheet';
import { type Fit, useFit } from './use-fit';

type PrintViewProps = ClubViewProps & { readonly briefing: Briefing };

/** What comes out of the printer, as it will look; only the sheets themselves are printed. */
export function PrintView(props: PrintViewProps) {
  const { records, club, briefing, now, preferences } = props;
  const [chosen, setChosen] = useState<Paper['value']>('briefing-a4');
  const paper = PAPERS.find(({ value }) => value === chosen) ?? PAPERS[0];
  const names = useMemo(() => clubNames(records), [records]);
  const { ref, fit } = useFit<HTMLElement>(paper, briefing);
  const { event } = records.event.value;
  const noSheet = [...club.broken, ...briefing.unplanned.map(({ racer }) => racer)].map(({ name }) => name);
  return (
    <main className={styles.view}>
      <div className={styles.desk}>
        <h1>Print</h1>
        <Select
          label="What, on which paper"
          hint="Choose the same paper in the printer’s own window, at its true size."
          value={chosen}
          options={PAPERS}
          onChange={setChosen}
        />
        <PaperNotices fit={fit} paper={paper} noSheet={noSheet} />
        <ButtonRow>
          <Button kind="primary" onClick={() => window.print()}>
            Print
          </Button>
          <a className={styles.leave} href="#briefing">
            Back to the briefing
          </a>
        </ButtonRow>
      </div>
      <section
        ref={ref}
        aria-label="As it will be printed"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: on a narrow screen it scrolls sideways, by keyboard too
        tabIndex={0}
        className={classNames(styles.sheets, styles[paper.value])}
      >
        {paper.what === 'briefing' ? (
          <BriefingPrint {...props} names={names} hoursAcross={paper.hoursAcross} />
        ) : (
          briefing.planned.map((planned) => (
            <RacerSheet
              key={planned.racer.id}
              planned={planned}
              briefing={briefing}
              names={names}
              event={event}
              now={now}
              units={preferences}
              series={club.night?.series ?? null}
            />
          ))
        )}
      </section>
    </main>
  );
}

type PaperNoticesProps = {
  readonly fit: Fit;
  readonly paper: Paper;
  /** Racers without a plan, who would look in vain for their sheet. */
  readonly noSheet: readonly string[];
};

/** What would go wrong on this paper, said before it is wasted. */
function PaperNotices({ fit, paper, noSheet }: PaperNoticesProps) {
  return (
    <>
      {paper.what === 'sheets' && noSheet.length > 0 ? (
        <Notice tone="caution" title={`No sheet for ${listing(noSheet)}.`}>
          <p>There is no plan for them; the briefing page says why.</p>
        </Notice>
      ) : null}
      {fit.long.length === 0 ? null : (
        <Notice tone="caution" title="Too long for this paper.">
          <p>
            {`${listing(fit.long)}: nothing is cut, but it goes on over a second page. ${paper.value === 'sheet-a6' ? 'Choose A5.' : 'Print the whole briefing instead.'}`}
          </p>
        </Notice>
      )}
      {fit.wide ? (
        <Notice tone="danger" title="Too wide for this paper: the edge would be cut.">
          <p>Choose a larger paper.</p>
        </Notice>
      ) : null}
    </>
  );
}
