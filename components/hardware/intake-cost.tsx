import { Section } from '@/components/ui/section';
import { Table } from '@/components/ui/table';
import { baselineSetting } from '@/lib/carb/baseline-setting';
import { drifts } from '@/lib/carb/drift';
import { INTAKE_CHOICES, type IntakeChoice } from '@/lib/carb/intake-choices';
import type { MachineJson } from '@/lib/contract/machine';
import { machineFromJson } from '@/lib/contract/machine-from-json';
import { intakeCost } from '@/lib/power/intake-cost';
import type { UnitChoice } from '@/lib/units/choice';
import { formatTemperatureStep } from '@/lib/units/format';
import { kelvinDifference, ratio } from '@/lib/units/quantity';
import { intakeCostSentence, intakeMixtureSentence } from '@/lib/words/hardware';

const NAMES: Readonly<Record<IntakeChoice, string>> = {
  ducted: 'Ducted airbox',
  open: 'Open filters in the engine bay',
  hood: 'From under the hood',
};
const CHOICES: readonly IntakeChoice[] = ['ducted', 'open', 'hood'];

type IntakeCostProps = { readonly machine: MachineJson; readonly units: UnitChoice };

/** What it costs to draw warmer air, in the air the jets were proven in. */
export function IntakeCost({ machine, units }: IntakeCostProps) {
  const read = machineFromJson(machine);
  if (!read.ok) return null;
  const { intakeOffset, baselineAir, ratedPower } = read.value;
  const setting = baselineSetting(read.value);
  const driftAt = (offset: number): number =>
    drifts({ ...read.value, intakeOffset: kelvinDifference(offset) }, setting, baselineAir)[0] ?? 0;
  return (
    <Section title="Where the air is drawn from" level={3}>
      <Table
        caption={`Against now, ${formatTemperatureStep(intakeOffset, units, 0)} over the weather. How warm each is: common practice, no source; a thermometer at the carburettor is better.`}
        rows={CHOICES}
        rowKey={(choice) => choice}
        columns={[
          {
            head: 'Air',
            names: true,
            cell: (choice) =>
              `${NAMES[choice]}, ${formatTemperatureStep(INTAKE_CHOICES[choice], units, 0)} over`,
          },
          {
            head: 'Power',
            cell: (choice) => {
              const to = INTAKE_CHOICES[choice];
              const warmer = kelvinDifference(to - intakeOffset);
              const cost = intakeCost(baselineAir, { from: intakeOffset, to });
              return intakeCostSentence({ warmer, cost, ratedPower, units });
            },
          },
          {
            head: 'Mixture',
            cell: (choice) =>
              intakeMixtureSentence(ratio(driftAt(INTAKE_CHOICES[choice]) - driftAt(intakeOffset))),
          },
        ]}
      />
    </Section>
  );
}
