'use client';

import { useMemo } from 'react';
import { useHours } from '@/components/store/use-clock-zone';
import { useWrite } from '@/components/store/use-write';
import { Button } from '@/components/ui/button';
import { Disclosure } from '@/components/ui/disclosure';
import { Notice } from '@/components/ui/notice';
import { Section } from '@/components/ui/section';
import { ButtonRow } from '@/components/ui/stack';
import { Table } from '@/components/ui/table';
import { interval90, type LearnedEntry } from '@/lib/carb/learn';
import { withLearned, withoutLearned } from '@/lib/store/machine-history';
import { learningOf, type MachineLearning, usedInPlans } from '@/lib/store/machine-learning';
import type { LogRecord, MachineRecord, Stored } from '@/lib/store/records';
import type { UnitChoice } from '@/lib/units/choice';
import { formatNumber } from '@/lib/units/format';
import { entryNames } from '@/lib/words/learned-entries';
import {
  assumedSentence,
  exponentText,
  influenceText,
  informationSentence,
  leftOutSentence,
  levelSentence,
  originText,
  outlierSentence,
  scatterSentence,
} from '@/lib/words/learning';
import { ChartInput } from './chart-input';
import { ExponentPicture } from './exponent-picture';
import { FitPicture } from './fit-picture';

type LearnProps = {
  readonly stored: Stored<MachineRecord>;
  readonly log: readonly Stored<LogRecord>[];
  readonly units: UnitChoice;
};

/** How far mains of this machine move with the air: what was assumed, what its chart and log say, and why. */
export function LearnSection({ stored, log, units }: LearnProps) {
  const hours = useHours();
  const learning = useMemo(() => learningOf(stored.value, log), [stored.value, log]);
  const names = useMemo(
    () => entryNames(stored.value, log, { units, hours }),
    [stored.value, log, units, hours],
  );
  if (learning === null) return <p>Fix the machine first: then the app can learn about it.</p>;
  const { learned, machine, leftOut, logStep } = learning;
  const outliers = learned.entries.filter(({ outlier }) => outlier).map(({ id }) => names.get(id) ?? id);
  const said = [
    informationSentence('pressure', learned.pressure),
    informationSentence('temperature', learned.temperature),
    learned.baselineShift === null ? '' : levelSentence(learned.baselineShift, logStep),
    scatterSentence(learned),
    leftOutSentence(leftOut),
  ].filter((sentence) => sentence !== '');
  return (
    <Section title="Response: how far mains move with the air">
      <p>
        Mains go with pressure and temperature to a power: 0.5 is the law of an orifice, 1 is in step with
        density. Every engine has its own. A chart or verdicts in the run log tell which.{' '}
        {assumedSentence(learned.prior)}
      </p>
      <ChartInput stored={stored} units={units} />
      <ExponentPicture learned={learned} />
      <ExponentTable learning={learning} />
      <ul>
        {said.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      {outliers.length > 0 ? <Notice tone="caution" title={outlierSentence(outliers)} /> : null}
      <UseInPlans stored={stored} learning={learning} />
      <FitPicture entries={learned.entries} machine={machine} names={names} />
      <EntryTable entries={learned.entries} names={names} />
    </Section>
  );
}

type Row = { readonly name: string; readonly assumed: string; readonly now: string };

/** Both exponents before the evidence and, where there is any, after it. */
function ExponentTable({ learning: { learned } }: { readonly learning: MachineLearning }) {
  const { prior, response } = learned;
  const rows: readonly Row[] = [
    {
      name: 'Pressure',
      assumed: exponentText(prior.pressureExponent, interval90(prior.pressureExponent, prior.pressureSd)),
      now: exponentText(response.pressureExponent, learned.pressure),
    },
    {
      name: 'Temperature',
      assumed: exponentText(
        prior.temperatureExponent,
        interval90(prior.temperatureExponent, prior.temperatureSd),
      ),
      now: exponentText(response.temperatureExponent, learned.temperature),
    },
  ];
  return (
    <Table
      caption="Exponents with their 90 % intervals"
      rows={rows}
      rowKey={({ name }) => name}
      columns={[
        { head: 'Exponent of', names: true, cell: ({ name }) => name },
        { head: 'Assumed', cell: ({ assumed }) => assumed },
        ...(learned.origin === 'prior'
          ? []
          : [{ head: `From ${originText(learned.origin)}`, cell: ({ now }: Row) => now }]),
      ]}
    />
  );
}

type UseProps = { readonly stored: LearnProps['stored']; readonly learning: MachineLearning };

/** What plans use now, and the way to change it. */
function UseInPlans({ stored, learning: { learned } }: UseProps) {
  const write = useWrite();
  const used = usedInPlans(stored.value, learned);
  const { response } = stored.value.machine;
  const key = { table: 'machines', id: stored.id } as const;
  const uses =
    response === undefined
      ? 'Plans use what is assumed.'
      : used === 'these'
        ? `Plans use these numbers, learned from ${originText(response.origin)}.`
        : `Plans use other numbers: ${formatNumber(response.pressureExponent, 2)} and ${formatNumber(response.temperatureExponent, 2)}, from ${originText(response.origin)}.`;
  return (
    <>
      <p>{uses}</p>
      <ButtonRow>
        <Button
          kind="primary"
          disabled={learned.origin === 'prior' || used === 'these'}
          onClick={() =>
            void write.change(key, (now) => withLearned(now, learned), 'Plans use what was learned.')
          }
        >
          Use what was learned in plans
        </Button>
        {response === undefined ? null : (
          <Button onClick={() => void write.change(key, withoutLearned, 'Plans use what is assumed again.')}>
            Back to what is assumed
          </Button>
        )}
      </ButtonRow>
    </>
  );
}

type EntryTableProps = {
  readonly entries: readonly LearnedEntry[];
  readonly names: ReadonlyMap<string, string>;
};

const moved = ({ influence }: LearnedEntry): number =>
  Math.abs(influence.pressure) + Math.abs(influence.temperature);

/** Which entries moved the exponents, the strongest first. */
function EntryTable({ entries, names }: EntryTableProps) {
  if (entries.length === 0) return null;
  return (
    <Disclosure summary={`What each of ${entries.length} entries did`}>
      <Table
        caption="Entries, the strongest first"
        captionHidden
        rows={[...entries].sort((a, b) => moved(b) - moved(a))}
        rowKey={({ id }) => id}
        columns={[
          { head: 'Entry', names: true, cell: ({ id }) => names.get(id) ?? id },
          { head: 'Moved', cell: (entry) => influenceText(entry) || 'hardly anything' },
          {
            head: 'Stands off the others',
            cell: ({ standardised, outlier }) =>
              `${formatNumber(standardised, 1)} sd${outlier ? ', far apart' : ''}`,
          },
        ]}
      />
    </Disclosure>
  );
}
