'use client';

import { Notice } from '@/components/ui/notice';
import { Section } from '@/components/ui/section';
import { Table } from '@/components/ui/table';
import { compare, standardOf } from '@/lib/compare/compare';
import type { FairComparison, Share } from '@/lib/power/fair-comparison';
import { STANDARDS } from '@/lib/power/standards';
import type { ComparisonRecord, MachineRecord } from '@/lib/store/records';
import type { UnitChoice } from '@/lib/units/choice';
import { horsepowerToWatt } from '@/lib/units/convert';
import { formatPower } from '@/lib/units/format';
import type { Watt } from '@/lib/units/quantity';
import { compareProblemSentences } from '@/lib/words/compare';
import {
  fairCaveatSentence,
  shareText,
  standardText,
  verdictSentences,
  verdictTitle,
} from '@/lib/words/fair';
import styles from './compare.module.css';
import { SharePicture } from './share-picture';

type ResultProps = {
  readonly record: ComparisonRecord;
  readonly machine: MachineRecord | null;
  readonly units: UnitChoice;
};

/** What is left for the part once air and mixture are taken out: in words, as a picture, as a table. */
export function ComparisonResult({ record, machine, units }: ResultProps) {
  if (machine === null)
    return (
      <Notice title="Choose the machine the runs were made with.">
        <p>Its jets and baseline tell how rich each run was.</p>
      </Notice>
    );
  const compared = compare(record, machine);
  if (!compared.ok)
    return (
      <Notice title="No comparison yet.">
        {compareProblemSentences(compared.reason, units).map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
      </Notice>
    );
  const comparison = compared.value;
  const { ratedPowerHp } = machine.machine;
  const ratedPower = ratedPowerHp === undefined ? null : horsepowerToWatt(ratedPowerHp);
  return (
    <Section title="What the part did">
      <p className={styles.verdict}>{verdictTitle(comparison.verdict)}</p>
      {verdictSentences(comparison, { part: record.part, ratedPower }).map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      <SharePicture comparison={comparison} />
      <ShareTable {...{ comparison, ratedPower }} />
      <p>
        Air corrected by {standardText(STANDARDS[standardOf(record)])}. {correctedText(comparison)}
        {record.pulls.some(({ powerHp }) => powerHp === null)
          ? ' Times and speeds are taken as power to the third root: speed grows with the cube root of power.'
          : ''}
      </p>
      {comparison.caveats.length === 0 ? null : (
        <ul>
          {comparison.caveats.map((caveat) => {
            const sentence = fairCaveatSentence(caveat, units);
            return <li key={sentence}>{sentence}</li>;
          })}
        </ul>
      )}
    </Section>
  );
}

function correctedText({ corrected }: FairComparison): string {
  return corrected === null
    ? ''
    : `In that air and jetted right it made ${formatPower(corrected.before, 1)} before and ${formatPower(corrected.after, 1)} after.`;
}

type ShareTableProps = { readonly comparison: FairComparison; readonly ratedPower: Watt | null };

function ShareTable({ comparison, ratedPower }: ShareTableProps) {
  const rows: readonly { readonly name: string; readonly share: Share }[] = [
    { name: 'Total change', share: comparison.total },
    { name: 'Made by the air', share: comparison.air },
    { name: 'Made by the mixture', share: comparison.mixture },
    { name: 'Left for the part', share: comparison.part },
  ];
  return (
    <Table
      caption="The change, with 90 % intervals"
      rows={rows}
      rowKey={({ name }) => name}
      columns={[
        { head: 'Share', names: true, cell: ({ name }) => name },
        { head: 'Power', cell: ({ share }) => shareText(share, ratedPower) },
      ]}
    />
  );
}
