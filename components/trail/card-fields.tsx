import type { FieldErrors } from '@/components/draft/field-reader';
import { part } from '@/components/draft/part';
import type { DraftState } from '@/components/draft/use-draft';
import { Choice } from '@/components/ui/choice';
import { NumberField } from '@/components/ui/number-field';
import { Columns, Stack } from '@/components/ui/stack';
import type { Machine } from '@/lib/carb/machine';
import type { CardDraft, TrailDraft } from './trail-draft';

type CardFieldsProps = {
  readonly draft: DraftState<TrailDraft>;
  readonly errors: FieldErrors;
  readonly machine: Machine;
};

const TEMPERATURES = [
  ['warmest', 'Warmest line'],
  ['coldest', 'Coldest line'],
  ['step', 'A line every'],
] as const;
const ELEVATIONS = [
  ['lowest', 'Lowest column'],
  ['highest', 'Highest column'],
  ['rise', 'A column every'],
] as const;

/** Which lines and columns the card has, and what stands in its cells. */
export function CardFields({ draft, errors, machine }: CardFieldsProps) {
  const card = part(draft, 'card');
  const { units } = draft.value;
  const field = (name: Exclude<keyof CardDraft, 'shows'>, label: string, unit: string) => (
    <NumberField
      key={name}
      label={label}
      unit={unit}
      signed={name !== 'step' && name !== 'rise'}
      value={card.value[name]}
      error={errors[name]}
      onChange={(text) => card.set(name, text)}
    />
  );
  return (
    <Stack>
      <Columns>{TEMPERATURES.map(([name, label]) => field(name, label, `°${units.temperature}`))}</Columns>
      <Columns>{ELEVATIONS.map(([name, label]) => field(name, label, units.elevation))}</Columns>
      {machine.pilot === null ? null : (
        <Choice
          label="In each cell"
          value={card.value.shows}
          options={[
            { value: 'main', label: 'Main' },
            { value: 'main-screw', label: 'Main and screw' },
            { value: 'main-screw-clip', label: 'Main, screw and clip' },
          ]}
          onChange={(shows) => card.set('shows', shows)}
        />
      )}
    </Stack>
  );
}
