'use client';

import { Fold } from '@/components/draft/fold';
import { NarrowColumns } from '@/components/draft/narrow-columns';
import { Stack } from '@/components/ui/stack';
import { ClipDrawing } from './clip-drawing';
import type { MachineFields } from './machine-fields';
import { circuitsNow } from './now-words';
import { ScrewDrawing } from './screw-drawing';

/** The circuits beside the main; none is needed for a plan. */
export function CircuitFields({ draft, form, field, all }: MachineFields) {
  const { trim, pilot, needle } = draft.value;
  const bad = ['trim.', 'pilot.', 'needle.'].some((group) => form.hasErrors(group));
  return (
    <Fold
      title="Trim, pilot and needle"
      now={circuitsNow(draft.value)}
      open={trim.on || pilot.on || needle.on || bad}
    >
      <Stack>
        {field('trim.on')}
        {trim.on ? <NarrowColumns>{all('trim')}</NarrowColumns> : null}
        {field('pilot.on')}
        {field('pilot.screw')}
        {pilot.on ? <ScrewDrawing screw={pilot.screw} /> : null}
        {pilot.on ? (
          <NarrowColumns>
            {field('pilot.jet')}
            {field('pilot.turns')}
            {field('pilot.leastTurns')}
            {field('pilot.mostTurns')}
            {field('pilot.turnsPerSize')}
            {field('pilot.percentPerSize')}
          </NarrowColumns>
        ) : null}
        {field('pilot.jets')}
        {field('needle.on')}
        {needle.on ? <ClipDrawing /> : null}
        {needle.on ? <NarrowColumns>{all('needle')}</NarrowColumns> : null}
      </Stack>
    </Fold>
  );
}
