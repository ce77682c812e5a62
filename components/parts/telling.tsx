'use client';

import { useState } from 'react';
import { Button } from '@/components/ui/button';
import { Disclosure } from '@/components/ui/disclosure';
import { FaultBoundary } from '@/components/ui/fault-boundary';
import { FieldError } from '@/components/ui/field';
import { Notice } from '@/components/ui/notice';
import { ScrollRegion } from '@/components/ui/scroll-region';
import { Section } from '@/components/ui/section';
import { ShrunkToFit } from '@/components/ui/shrunk-to-fit';
import { Table } from '@/components/ui/table';
import { VisuallyHidden } from '@/components/ui/visually-hidden';
import { WholeNames } from '@/components/ui/whole-names';

const TONES = ['note', 'caution', 'danger'] as const;

type Jet = { readonly size: number; readonly count: number };
const JETS: readonly Jet[] = [
  { size: 400, count: 3 },
  { size: 410, count: 2 },
];
const COLUMNS = [
  { head: 'Main', names: true, cell: ({ size }: Jet) => size },
  { head: 'Owned', figures: true, cell: ({ count }: Jet) => count },
] as const;

/** What is said. */
export function Telling() {
  return (
    <Section title="Telling" aside="an aside">
      {TONES.map((tone) => (
        <Notice key={tone} tone={tone} title={`A ${tone}`}>
          What it says.
        </Notice>
      ))}
      <Disclosure summary="Closed">What is inside.</Disclosure>
      <Disclosure summary="Open" open>
        What is inside.
      </Disclosure>
      <FieldError id="parts-error">An error by itself.</FieldError>
      <ScrollRegion labelledBy="parts-jets">
        <h3 id="parts-jets">Tables</h3>
        <Table caption="With rows" columns={COLUMNS} rows={JETS} rowKey={({ size }) => String(size)} />
        <Table
          caption="Without rows"
          columns={COLUMNS}
          rows={[]}
          rowKey={({ size }) => String(size)}
          empty="No jets yet."
        />
      </ScrollRegion>
      <ShrunkToFit>
        <p style={{ width: '1600px' }}>Wider than its place, and shown as much smaller as it has to be.</p>
      </ShrunkToFit>
      <FaultBoundary part="A part that fails">
        <Failing />
      </FaultBoundary>
      <p>
        <WholeNames text="A name with a hyphen stands on one line: North-West." />
      </p>
      <VisuallyHidden>Words for a screen reader only.</VisuallyHidden>
    </Section>
  );
}

function Failing() {
  const [failed, setFailed] = useState(false);
  if (failed) throw new Error('A part that fails, so that what is said then can be seen');
  return <Button onClick={() => setFailed(true)}>Let this part fail</Button>;
}
