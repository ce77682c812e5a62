'use client';

import { useMemo } from 'react';
import { Section } from '@/components/ui/section';
import type { Briefing } from '@/lib/club/briefing';
import type { ClockZone } from '@/lib/time/zone';
import type { ClubNames } from '@/lib/words/club';
import { matrixOf } from '@/lib/words/matrix-of';
import { ClubMatrix } from './matrix';

type MatrixSectionProps = {
  readonly briefing: Briefing;
  readonly names: ClubNames;
  readonly zone: ClockZone;
};

/** Racers by hours: one look says who is on what, and where it gets dangerous. */
export function MatrixSection({ briefing, names, zone }: MatrixSectionProps) {
  const matrix = useMemo(() => matrixOf(briefing.planned, zone), [briefing, zone]);
  return (
    <Section title="Racers by the hour" id="matrix">
      <ClubMatrix matrix={matrix} names={names} caption="What is in each engine in each hour of the night" />
    </Section>
  );
}
