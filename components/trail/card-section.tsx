'use client';

import { useMemo, useState } from 'react';
import { Button } from '@/components/ui/button';
import { Disclosure } from '@/components/ui/disclosure';
import { Notice } from '@/components/ui/notice';
import { saveFile } from '@/components/ui/save-file';
import { Section } from '@/components/ui/section';
import { Select } from '@/components/ui/select';
import { ButtonRow } from '@/components/ui/stack';
import { CARD_PAPERS, type CardPaper, cardPaperOf } from '@/lib/share/card-papers';
import { jetCardCsv } from '@/lib/share/jet-card-csv';
import { planProblemSentence } from '@/lib/words/plan-problems';
import { CardFields } from './card-fields';
import { CardNotes } from './card-notes';
import { CardSheet } from './card-sheet';
import { CardTable } from './card-table';
import { readCard } from './read-card';
import type { TrailSectionProps } from './section-props';
import { trailFields } from './trail-fields';
import { useJetCard } from './use-jet-card';
import { usePrinting } from './use-printing';

/** Temperature by height, as mains out of the person's own box. */
export function CardSection({ draft, machine, name }: TrailSectionProps & { readonly name: string }) {
  const { card: typed, units } = draft.value;
  const [chosen, setChosen] = useState('');
  const { printing, print } = usePrinting<CardPaper>();
  const printed = cardPaperOf(chosen, units.temperature);
  const reading = useMemo(() => readCard(typed, units), [typed, units]);
  const state = useJetCard(machine, reading.axes);
  const complete = state.status === 'ready' && reading.axes !== null ? state.card : null;
  const { shows } = typed;
  return (
    <Section title="The jet card" id="card">
      {state.status === 'problem' ? (
        <Notice tone="caution" title="There is no card yet.">
          <p>{planProblemSentence(state.problem, { zone: 'UTC', runNames: [] })}</p>
        </Notice>
      ) : null}
      {complete === null ? (
        <p role="status">
          {reading.axes === null ? 'Fix the lines and columns below.' : 'Working the card out…'}
        </p>
      ) : (
        <>
          <CardTable card={complete} machine={machine} units={units} shows={shows} />
          <CardNotes card={complete} machine={machine} shows={shows} />
          <Select label="Paper" value={printed.value} options={CARD_PAPERS} onChange={setChosen} />
          <ButtonRow>
            <Button onClick={() => print(printed)}>Print the card</Button>
            <Button
              onClick={() =>
                saveFile({
                  name: 'jet-card.csv',
                  type: 'text/csv',
                  text: jetCardCsv(complete, machine, units),
                })
              }
            >
              Save as CSV
            </Button>
          </ButtonRow>
          {printing === null ? null : (
            <CardSheet printed={printing} card={complete} {...{ machine, units, name, shows }} />
          )}
        </>
      )}
      <Disclosure summary="Change lines, columns and what stands in the cells">
        <CardFields {...trailFields(draft, reading.errors)} machine={machine} />
      </Disclosure>
    </Section>
  );
}
