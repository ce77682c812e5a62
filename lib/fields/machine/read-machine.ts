import { type MachineJson, machineSchema } from '@/lib/contract/machine';
import { machineFromJson } from '@/lib/contract/machine-from-json';
import { parseWith } from '@/lib/contract/parse';
import type { Path } from '@/lib/contract/problem';
import { type FormReading, fieldReader } from '@/lib/fields/field-reader';
import { formReading } from '@/lib/fields/form-reading';
import { fieldAt, readFields } from '@/lib/fields/table-values';
import { ADVANCED, MACHINE, type MachineDraft } from './machine-rows';
import { readBox, readMains, readMarking } from './read-jets';

/** What a machine's draft says: the machine, or what is wrong with which field. */
export function readMachine(draft: MachineDraft): FormReading<MachineJson> {
  const reader = fieldReader(draft.units);
  const read = readFields(
    MACHINE,
    draft,
    reader,
    {
      main: () => readMains(draft, reader),
      list: () => readMarking(draft, reader),
      'box.text': () => readBox(draft.box, reader),
    },
    ['swapWorthPercent', ...ADVANCED],
  );
  const sure = draft.markingSure === draft.marking ? { markingSure: true } : {};
  return formReading(
    reader,
    { ...read, ...sure },
    {
      parse: (json) => parseWith(machineSchema, json),
      check: (machine) => machineFromJson(machine),
      fieldOf: (path) => machineField(path, draft),
    },
  );
}

/** The field that a place in a machine's JSON was typed in. */
function machineField(path: Path, draft: MachineDraft): string {
  const [head, second] = path;
  if (head === 'carburettors' && draft.staggered && typeof second === 'number') return `mains.${second}`;
  if (head === 'box' && draft.box.how === 'range') return 'box.from';
  return fieldAt(MACHINE, draft, path) ?? path.join('.');
}
