'use client';

import { useWrite } from '@/components/store/use-write';
import { Button } from '@/components/ui/button';
import { pieces } from '@/lib/carb/box';
import { machineWithBaseline } from '@/lib/store/machine-in-force';
import { duplicateOf } from '@/lib/store/new-machine-record';
import type { MachineRecord, Stored } from '@/lib/store/records';
import { machineNames } from '@/lib/store/roster-names';
import type { UnitChoice } from '@/lib/units/choice';
import { celsiusToKelvin } from '@/lib/units/convert';
import { formatElevation, formatTemperature } from '@/lib/units/format';
import { metre } from '@/lib/units/quantity';
import { counted } from '@/lib/words/listing';
import { jetsText } from '@/lib/words/settings';
import styles from './machine-list.module.css';

type MachineListProps = {
  readonly machines: readonly Stored<MachineRecord>[];
  readonly units: UnitChoice;
  readonly onEdit: (id: string) => void;
  readonly onHistory: (id: string) => void;
};

/** Every machine with what can be done with it. */
export function MachineList({ machines, units, onEdit, onHistory }: MachineListProps) {
  const write = useWrite();
  const duplicate = (record: MachineRecord) => {
    const copy = duplicateOf(record);
    void write.add('machines', copy, `${copy.machine.name} is added.`);
  };
  const names = machineNames(machines);
  return (
    <ul className={styles.list}>
      {machines.map((machine) => {
        const name = names.get(machine.id) ?? machine.value.machine.name;
        return (
          <li key={machine.id} className={styles.machine}>
            <div>
              <h2 className={styles.name}>{name}</h2>
              <p>{summary(machine.value, units)}</p>
              {machine.value.toBeReproven ? <p>Test the baseline again: a part was changed since.</p> : null}
            </div>
            <div className={styles.acts}>
              <Button aria-label={`Edit ${name}`} onClick={() => onEdit(machine.id)}>
                Edit
              </Button>
              <Button
                aria-label={`Baselines, parts, learning: ${name}`}
                onClick={() => onHistory(machine.id)}
              >
                Baselines, parts, learning
              </Button>
              <Button aria-label={`Duplicate ${name}`} onClick={() => duplicate(machine.value)}>
                Duplicate
              </Button>
              <Button
                kind="quiet"
                aria-label={`Delete ${name}`}
                onClick={() => void write.remove('machines', machine, `${name} is deleted.`)}
              >
                Delete
              </Button>
            </div>
          </li>
        );
      })}
    </ul>
  );
}

/** "Mains 410 400 410, proven at 18 °F and 1,319 ft. 27 jets in the box." */
function summary(record: MachineRecord, units: UnitChoice): string {
  const { carburettors, baseline, box } = machineWithBaseline(record);
  const { temperatureC, elevationM } = baseline.air;
  const where = elevationM === undefined ? '' : ` and ${formatElevation(metre(elevationM), units)}`;
  const air = `${formatTemperature(celsiusToKelvin(temperatureC), units)}${where}`;
  return `Mains ${jetsText(carburettors.map(({ main }) => main))}, proven at ${air}. ${counted(pieces(box), 'jet')} in the box.`;
}
