'use client';

import { useMemo, useState } from 'react';
import type { ClubViewProps } from '@/components/club/view-props';
import paperStyles from '@/components/paper/paper.module.css';
import { SheetPagesView } from '@/components/paper/sheet-pages-view';
import { Button } from '@/components/ui/button';
import { classNames } from '@/components/ui/class-names';
import { Notice } from '@/components/ui/notice';
import { Select } from '@/components/ui/select';
import { ShrunkToFit } from '@/components/ui/shrunk-to-fit';
import { ButtonRow } from '@/components/ui/stack';
import type { Briefing } from '@/lib/club/briefing';
import { CLUB_PAPERS, type ClubPaper, clubPaperOf } from '@/lib/share/club-papers';
import { clubNames } from '@/lib/words/club-names';
import { listing } from '@/lib/words/listing';
import { BriefingPrint } from './briefing-print';
import styles from './print.module.css';
import { useRacerSheets } from './use-racer-sheets';
import { useWide } from './use-wide';

type PrintViewProps = ClubViewProps & { readonly briefing: Briefing };

/** What comes out of the printer, as it will look; only the sheets themselves are printed. */
export function PrintView(props: PrintViewProps) {
  const { records, club, briefing } = props;
  const [chosen, setChosen] = useState<ClubPaper['value']>('briefing-a4');
  const paper = clubPaperOf(chosen);
  const names = useMemo(() => clubNames(records), [records]);
  const { ref, wide } = useWide<HTMLElement>(paper, briefing);
  const noSheet = [...club.broken, ...briefing.unplanned.map(({ racer }) => racer)].map(({ name }) => name);
  const sheets = useRacerSheets(props, names);
  return (
    <main className={styles.view}>
      <div className={styles.desk}>
        <h1>Print</h1>
        <Select
          label="What, on which paper"
          hint="Choose the same paper in the printer’s own window, at its true size."
          value={chosen}
          options={CLUB_PAPERS}
          onChange={setChosen}
        />
        <PaperNotices paper={paper} wide={wide} noSheet={noSheet} />
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
        className={classNames(paperStyles.blackOnWhite, styles.sheets, styles[paper.value])}
      >
        {paper.what === 'briefing' ? (
          <ShrunkToFit className={styles.page}>
            <BriefingPrint {...props} names={names} hoursAcross={paper.hoursAcross} />
          </ShrunkToFit>
        ) : (
          <SheetPagesView
            paper={paper.paper}
            sheets={sheets}
            tooLong={(long) => <TooLong long={long} paper={paper} />}
          />
        )}
      </section>
    </main>
  );
}

/** Said before paper is wasted. */
function TooLong({ long, paper }: { readonly long: readonly string[]; readonly paper: ClubPaper }) {
  const better = paper.value === 'sheet-a6' ? 'Choose A5.' : 'Print the whole briefing instead.';
  return (
    <Notice tone="caution" title="Too long for this paper.">
      <p>{`${listing(long)}: nothing is cut, but it goes on over a second page. ${better}`}</p>
    </Notice>
  );
}

type PaperNoticesProps = {
  readonly paper: ClubPaper;
  readonly wide: boolean;
  /** Racers without a plan, who would look in vain for their sheet. */
  readonly noSheet: readonly string[];
};

/** What would go wrong on this paper. */
function PaperNotices({ paper, wide, noSheet }: PaperNoticesProps) {
  return (
    <>
      {paper.what === 'sheets' && noSheet.length > 0 ? (
        <Notice tone="caution" title={`No sheet for ${listing(noSheet)}.`}>
          <p>There is no plan for them; the briefing page says why.</p>
        </Notice>
      ) : null}
      {wide ? (
        <Notice tone="danger" title="Too wide for this paper: the edge would be cut.">
          <p>Choose a larger paper.</p>
        </Notice>
      ) : null}
    </>
  );
}
