'use client';

import { Fold } from '@/components/draft/fold';
import { NarrowColumns } from '@/components/draft/narrow-columns';
import { part, wholeOf } from '@/components/draft/part';
import { Switched } from '@/components/draft/switched';
import { NumberField } from '@/components/ui/number-field';
import { Columns, Stack } from '@/components/ui/stack';
import { Switch } from '@/components/ui/switch';
import { useHash } from '@/components/ui/use-hash';
import type { ResponseDraft } from './machine-draft';
import { advancedNow } from './now-words';
import type { MachineSectionProps } from './section-props';
import { SwapWorthField } from './swap-worth-field';
import { SWAP_WORTH } from './swap-worth-hash';

const ORIGINS: Readonly<Record<ResponseDraft['origin'], string>> = {
  prior: 'the default',
  chart: 'learned from your chart',
  log: 'learned from your log',
  'chart-and-log': 'learned from your chart and log',
  typed: 'typed by you',
};

/** What most racers never touch: the response, fuel density, and what richness and a swap cost. */
export function AdvancedFields({ draft, form }: MachineSectionProps) {
  const whole = wholeOf(draft);
  const { response, fuelDensity, richPowerLoss, ratedPowerHp, swapWorthPercent } = draft.value;
  const asked = useHash() === SWAP_WORTH;
  const bad = ['response.', 'fuelDensity.', 'richPowerLoss', 'ratedPowerHp', 'swapWorthPercent'].some(
    (name) => form.hasErrors(name),
  );
  return (
    <Fold
      title="Advanced"
      now={advancedNow(draft.value)}
      open={response.own || fuelDensity.on || swapWorthPercent !== '' || asked || bad}
    >
      <Stack>
        <ResponseFields draft={draft} form={form} />
        <FuelFields draft={draft} form={form} />
        <SwapWorthField draft={draft} form={form} />
        <Columns>
          <NumberField
            {...form.field('richPowerLoss')}
            hint="Power = 1 − k × drift² on the rich side. 2 is an assumption."
            value={richPowerLoss}
            onChange={(text) => whole.set('richPowerLoss', text)}
          />
          <NumberField
            {...form.field('ratedPowerHp')}
            hint="Optional; shows shares of power in horsepower. It changes no plan."
            unit="hp"
            value={ratedPowerHp}
            onChange={(text) => whole.set('ratedPowerHp', text)}
          />
        </Columns>
      </Stack>
    </Fold>
  );
}

type ResponseNumber = Exclude<keyof ResponseDraft, 'own' | 'origin'>;

function ResponseFields({ draft, form }: MachineSectionProps) {
  const response = part(draft, 'response');
  const { own, origin } = response.value;
  const number = (key: ResponseNumber) => (
    <NumberField
      {...form.field(`response.${key}`)}
      value={response.value[key]}
      onChange={(text) =>
        // A number changed by hand is no longer what was learned.
        draft.change(`response.${key}`, (before) => ({
          ...before,
          response: { ...before.response, origin: 'typed', [key]: text },
        }))
      }
    />
  );
  return (
    <>
      <Switch
        label="Own response to pressure and temperature"
        hint="How far mains move with the air: 0.5 is the law of an orifice, 1 is in step with density. Until your chart or log says otherwise, 0.65 ± 0.12 is assumed for both."
        checked={own}
        onChange={(next) => response.set('own', next)}
      />
      {own ? (
        <>
          <p>These numbers are {ORIGINS[origin]}.</p>
          <NarrowColumns>
            {number('pressureExponent')}
            {number('pressureSd')}
            {number('temperatureExponent')}
            {number('temperatureSd')}
            {number('correlation')}
          </NarrowColumns>
        </>
      ) : null}
    </>
  );
}

function FuelFields({ draft, form }: MachineSectionProps) {
  const fuel = part(draft, 'fuelDensity');
  const unit = `°${draft.value.units.temperature}`;
  const temperature = (key: 'offset' | 'baseline') => (
    <NumberField
      {...form.field(`fuelDensity.${key}`)}
      signed
      unit={unit}
      value={fuel.value[key]}
      onChange={(text) => fuel.set(key, text)}
    />
  );
  return (
    <Switched
      label="Count the density of cold fuel"
      hint="Cold fuel is denser and thicker; the two about cancel in a jet, so this is off."
      group={fuel}
    >
      <NarrowColumns>
        {temperature('offset')}
        {temperature('baseline')}
      </NarrowColumns>
    </Switched>
  );
}
