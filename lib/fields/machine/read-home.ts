import { INTAKE_CHOICES } from '@/lib/carb/intake-choices';
import { LIMIT_CHOICES } from '@/lib/carb/limits';
import { markingDoubt } from '@/lib/carb/marking-doubt';
import { type MachineInput, type MachineJson, machineSchema } from '@/lib/contract/machine';
import { machineFromJson } from '@/lib/contract/machine-from-json';
import { parseWith } from '@/lib/contract/parse';
import { type FieldReader, type FormReading, fieldReader } from '@/lib/fields/field-reader';
import { formReading } from '@/lib/fields/form-reading';
import { fieldAt, readNumberRow } from '@/lib/fields/table-values';
import { withoutDust } from '@/lib/units/entry-text';
import { HOME_NAME, PILOT_NEEDED, TURNS_NEEDED } from '@/lib/words/home-machine';
import { NEEDLE, PILOT } from './circuit-rows';
import { HOME, type HomeDraft } from './home-rows';

/** The machine that was read off, with the careful limits of a trail; the box holds what is fitted. */
export function readHome(draft: HomeDraft): FormReading<MachineJson> {
  const reader = fieldReader(draft.units);
  const read = (key: 'main' | 'temperature' | 'elevation' | 'groove') =>
    readNumberRow(HOME.top.rows[key], draft[key], key, reader);
  const count = Number(draft.carburettors);
  const main = read('main');
  const air = { temperatureC: read('temperature'), elevationM: read('elevation') };
  const pilot = pilotOf(draft, reader);
  const groove = read('groove');
  const { lean, rich, risk } = LIMIT_CHOICES.trail;
  const record = {
    name: HOME_NAME,
    carburettors: Array.from({ length: count }, () => ({ main })),
    jetMarking: main === undefined ? 'flow' : markingOf(main),
    box: [{ size: main, count }],
    baseline: { air },
    ...(pilot === undefined ? {} : { pilot }),
    ...(groove === undefined
      ? {}
      : { needle: { groove, grooves: Math.max(Number(NEEDLE.rows.grooves.blank), groove) } }),
    limits: { leanPercent: withoutDust(lean * 100), richPercent: withoutDust(rich * 100), risk },
    intakeOffsetC: INTAKE_CHOICES.ducted,
  };
  return formReading(reader, record, {
    parse: (json) => parseWith(machineSchema, json),
    check: (machine) => machineFromJson(machine),
    fieldOf: (path) => fieldAt(HOME, draft, path) ?? HELD_BY[String(path[0])] ?? 'main',
  });
}

/** Which field speaks for what nobody typed. */
const HELD_BY: Readonly<Record<string, string | undefined>> = {
  baseline: 'elevation',
  pilot: 'turns',
  needle: 'groove',
};

/** Whoever knows no jets is not asked how they are marked: flow, unless the number can be no flow mark. */
function markingOf(main: number): 'flow' | 'bore' {
  const jets = { box: [{ size: main, count: 1 }], carburettors: [{ main }] };
  return markingDoubt({ ...jets, marking: { kind: 'flow' } }) === null ? 'flow' : 'bore';
}

/** Pilot and turns go together: neither says anything alone. */
function pilotOf(draft: HomeDraft, reader: FieldReader): MachineInput['pilot'] {
  const { rows } = HOME.top;
  const jet = readNumberRow(rows.pilot, draft.pilot, 'pilot', reader);
  const turns = readNumberRow(rows.turns, draft.turns, 'turns', reader);
  const [hasJet, hasTurns] = [draft.pilot.trim() !== '', draft.turns.trim() !== ''];
  if (hasTurns && !hasJet) reader.complain('pilot', PILOT_NEEDED);
  if (hasJet && !hasTurns) reader.complain('turns', TURNS_NEEDED);
  if (jet === undefined || turns === undefined) return undefined;
  const usual = (key: 'leastTurns' | 'mostTurns') => Number(PILOT.rows[key].blank);
  return {
    jet,
    screw: draft.screw,
    turns,
    leastTurns: Math.min(usual('leastTurns'), turns),
    mostTurns: Math.max(usual('mostTurns'), turns),
  };
}
