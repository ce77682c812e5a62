'use client';

import { useDeferredValue, useMemo } from 'react';
import { Disclosure } from '@/components/ui/disclosure';
import { Notice } from '@/components/ui/notice';
import { Section } from '@/components/ui/section';
import type { PlanProblem } from '@/lib/plan/types';
import { type SeasonSetup, seasonSetup } from '@/lib/trail/season';
import { formatElevation } from '@/lib/units/format';
import { exampleElevationSentence } from '@/lib/words/example-ride';
import { planProblemSentence } from '@/lib/words/plan-problems';
import { DaysForm } from './days-form';
import { isExampleElevation } from './example-ride';
import { readSeasons } from './read-seasons';
import { SeasonAdvice } from './season-advice';
import { SeasonTable } from './season-table';
import type { TrailSectionProps } from './section-props';
import styles from './trail.module.css';
import { trailFields } from './trail-fields';

/** Two or more kinds of day side by side. */
export function SeasonsSection({ draft, machine, invented }: TrailSectionProps) {
  const { units, elevation, conditions } = draft.value;
  const reading = useMemo(
    () => readSeasons({ units, elevation, conditions }),
    [units, elevation, conditions],
  );
  const asked = useDeferredValue(reading.conditions);
  const setups = useMemo(() => asked.map((condition) => seasonSetup(machine, condition)), [asked, machine]);
  const good = setups.flatMap((setup): readonly SeasonSetup[] => (setup.ok ? [setup.value] : []));
  const problem = setups.find((setup) => !setup.ok);
  return (
    <Section title="Seasons side by side" id="seasons">
      {invented || reading.elevation === null || !isExampleElevation(elevation, units) ? null : (
        <p>{exampleElevationSentence(formatElevation(reading.elevation, units))}</p>
      )}
      {problem === undefined || problem.ok ? null : <NoSetup problem={problem.reason} />}
      {good.length === 0 ? (
        <p>No kind of day yet: type a temperature below.</p>
      ) : (
        <>
          <SeasonTable setups={good} machine={machine} units={units} />
          <p className={styles.source}>
            Boxed: differs from {good[0]?.condition.name}. Screw in turns out, clip groove from the top, power
            against the baseline in its own air. Main and trim as the planner leaves or changes them; the
            mixture is the main’s.
          </p>
          <SeasonAdvice setups={good} machine={machine} />
        </>
      )}
      <Disclosure summary="Change the days, or take them from past winters">
        <DaysForm {...trailFields(draft, reading.errors)} />
      </Disclosure>
    </Section>
  );
}

function NoSetup({ problem }: { readonly problem: PlanProblem }) {
  return (
    <Notice tone="caution" title="The mains cannot be chosen yet.">
      <p>{planProblemSentence(problem, { zone: 'UTC', runNames: [] })}</p>
    </Notice>
  );
}
