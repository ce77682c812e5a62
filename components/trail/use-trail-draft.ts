'use client';

import { useEffect, useRef } from 'react';
import { type DraftState, useDraft } from '@/components/draft/use-draft';
import { useHours } from '@/components/store/use-clock-zone';
import { draftInClock } from '@/lib/fields/trail/draft-in-clock';
import { draftInUnits } from '@/lib/fields/trail/draft-in-units';
import { firstDraft, TRAIL_SHAPE } from '@/lib/fields/trail/first-draft';
import type { TrailDraft } from '@/lib/fields/trail/trail-rows';
import { sameValue } from '@/lib/store/same-value';
import type { UnitChoice } from '@/lib/units/choice';

type Start = Parameters<typeof firstDraft>[0];

/** What was typed on this page, kept in the browser, in the units and on the clock of the person. */
export function useTrailDraft(start: Start, units: UnitChoice): DraftState<TrailDraft> {
  const hours = useHours();
  const shown = useRef(hours);
  const draft = useDraft({
    key: 'trail',
    initial: draftInClock(firstDraft(start), hours),
    shape: TRAIL_SHAPE,
  });
  const { change } = draft;
  const { temperature, pressure, elevation } = units;
  useEffect(() => {
    const wanted = { temperature, pressure, elevation };
    change(null, (before) => (sameValue(before.units, wanted) ? before : draftInUnits(before, wanted)));
  }, [change, temperature, pressure, elevation]);
  useEffect(() => {
    if (shown.current === hours) return;
    shown.current = hours;
    change(null, (before) => draftInClock(before, hours));
  }, [change, hours]);
  return draft;
}
