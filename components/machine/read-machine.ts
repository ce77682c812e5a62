import { complainOf } from '@/components/draft/complain-of';
import { type FieldReader, type FormReading, fieldReader, ifTyped } from '@/components/draft/field-reader';
import { withoutGaps } from '@/components/draft/without-gaps';
import { type MachineJson, machineSchema } from '@/lib/contract/machine';
import { machineFromJson } from '@/lib/contract/machine-from-json';
import { parseWith } from '@/lib/contract/parse';
import type { Path } from '@/lib/contract/problem';
import type { MachineDraft } from './machine-draft';
import { readBaseline } from './read-baseline';
import { readFuelDensity, readNeedle, readPilot, readTrim } from './read-circuits';
import { readBox, readMains, readMarking } from './read-jets';
import { readLimits, readResponse } from './read-limits';

/** What a machine's draft says: the machine, or what is wrong with which field. */
export function readMachine(draft: MachineDraft): FormReading<MachineJson> {
  const reader = fieldReader(draft.units);
  const toFields = {
    fieldOf: (path: Path): string => machineField(path, draft),
    voice: { zone: 'UTC', units: draft.units },
  };
  const parsed = parseWith(machineSchema, candidate(draft, reader));
  if (!parsed.ok) complainOf(reader, parsed.reason, toFields);
  if (!parsed.ok || Object.keys(reader.errors()).length > 0) return { value: null, errors: reader.errors() };
  const machine = machineFromJson(parsed.value);
  if (!machine.ok) complainOf(reader, machine.reason, toFields);
  return { value: machine.ok ? parsed.value : null, errors: reader.errors() };
}

/** The JSON as far as it can be read; what cannot is missing and complained about. */
function candidate(draft: MachineDraft, reader: FieldReader): unknown {
  if (draft.name.trim() === '') reader.complain('name', 'Give the machine a name, such as “Blue 600”.');
  return withoutGaps({
    name: draft.name,
    jetMarking: readMarking(draft, reader),
    markingSure: draft.markingSure === draft.marking ? true : undefined,
    carburettors: readMains(draft, reader),
    box: readBox(draft.box, reader),
    baseline: readBaseline(draft.baseline, reader),
    intakeOffsetC: reader.temperatureStepC({
      name: 'intake.offset',
      text: draft.intake.offset,
      example: '5',
    }),
    limits: readLimits(draft.limits, reader),
    trim: readTrim(draft.trim, reader),
    pilot: readPilot(draft.pilot, reader),
    needle: readNeedle(draft.needle, reader),
    response: readResponse(draft.response, reader),
    fuelDensity: readFuelDensity(draft.fuelDensity, reader),
    richPowerLoss: reader.number({ name: 'richPowerLoss', text: draft.richPowerLoss, example: '2' }),
    swapWorthPercent: ifTyped(draft.swapWorthPercent, () =>
      reader.number({ name: 'swapWorthPercent', text: draft.swapWorthPercent, example: '1.5' }),
    ),
    ratedPowerHp: ifTyped(draft.ratedPowerHp, () =>
      reader.number({ name: 'ratedPowerHp', text: draft.ratedPowerHp, example: '180' }),
    ),
  });
}

const BASELINE_FIELDS: Readonly<Record<string, string>> = {
  temperatureC: 'baseline.temperature',
  pressureHpa: 'baseline.pressure',
  altimeterHpa: 'baseline.pressure',
  seaLevelHpa: 'baseline.pressure',
  elevationM: 'baseline.elevation',
  relativeHumidity: 'baseline.humidity',
  dewPointC: 'baseline.humidity',
  frostPointC: 'baseline.humidity',
  intakeOffsetC: 'baseline.intakeOffset',
};

/** The field that a place in a machine's JSON was typed in. */
function machineField(path: Path, draft: MachineDraft): string {
  const [head, second, third] = path;
  if (head === 'carburettors')
    return draft.staggered && typeof second === 'number' ? `mains.${second}` : 'main';
  if (head === 'jetMarking') return 'list';
  if (head === 'box') return draft.box.how === 'typed' ? 'box.text' : 'box.from';
  if (head === 'intakeOffsetC') return 'intake.offset';
  if (head === 'baseline') return BASELINE_FIELDS[String(third ?? second)] ?? path.join('.');
  if (head === 'fuelDensity') return second === 'baselineC' ? 'fuelDensity.baseline' : 'fuelDensity.offset';
  return path.join('.');
}
