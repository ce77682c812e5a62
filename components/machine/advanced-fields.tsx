'use client';

import { Fold } from '@/components/draft/fold';
import { NarrowColumns } from '@/components/draft/narrow-columns';
import { Columns, Stack } from '@/components/ui/stack';
import { useHash } from '@/components/ui/use-hash';
import { ADVANCED, type MachineDraft } from '@/lib/fields/machine/machine-rows';
import type { MachineFields } from './machine-fields';
import { advancedNow } from './now-words';
import { SwapWorthField } from './swap-worth-field';
import { SWAP_WORTH } from './swap-worth-hash';

const ORIGINS: Readonly<Record<MachineDraft['response']['origin'], string>> = {
  prior: 'what is assumed',
  chart: 'learned from your chart',
  log: 'learned from your log',
  'chart-and-log': 'learned from your chart and log',
  typed: 'typed by you',
};

/** What most racers never touch: the response, fuel density, and what richness and a swap cost. */
export function AdvancedFields(fields: MachineFields) {
  const { draft, form, field, all } = fields;
  const { response, fuelDensity, swapWorthPercent } = draft.value;
  const asked = useHash() === SWAP_WORTH;
  const bad = ['response.', 'fuelDensity.', 'swapWorthPercent', ...ADVANCED].some((name) =>
    form.hasErrors(name),
  );
  return (
    <Fold
      title="Advanced"
      now={advancedNow(draft.value)}
      open={response.own || fuelDensity.on || swapWorthPercent !== '' || asked || bad}
    >
      <Stack>
        {field('response.own')}
        {response.own ? (
          <>
            <p>These numbers are {ORIGINS[response.origin]}.</p>
            <NarrowColumns>{all('response')}</NarrowColumns>
          </>
        ) : null}
        {field('fuelDensity.on')}
        {fuelDensity.on ? <NarrowColumns>{all('fuelDensity')}</NarrowColumns> : null}
        <SwapWorthField {...fields} />
        <Columns>{ADVANCED.map((name) => field(name))}</Columns>
      </Stack>
    </Fold>
  );
}
