import type { FieldReader } from '@/components/draft/field-reader';
import { readSizes } from '@/lib/carb/box-text';
import type { MachineDraft, NeedleDraft, PilotDraft, TrimDraft } from './machine-draft';

/** Reads the texts of one group as numbers, by their key in it. */
function groupReader(reader: FieldReader, group: string) {
  return (key: string, text: string, example: string): number | undefined =>
    reader.number({ name: `${group}.${key}`, text, example });
}

export function readTrim(draft: TrimDraft, reader: FieldReader): unknown {
  if (!draft.on) return undefined;
  const number = groupReader(reader, 'trim');
  return {
    lowest: number('lowest', draft.lowest, '1'),
    highest: number('highest', draft.highest, '3'),
    baseline: number('baseline', draft.baseline, '2'),
    percentPerPosition: number('percentPerPosition', draft.percentPerPosition, '2'),
  };
}

export function readPilot(draft: PilotDraft, reader: FieldReader): unknown {
  if (!draft.on) return undefined;
  const number = groupReader(reader, 'pilot');
  return {
    jet: number('jet', draft.jet, '40'),
    screw: draft.screw,
    turns: number('turns', draft.turns, '1.25'),
    leastTurns: number('leastTurns', draft.leastTurns, '0.5'),
    mostTurns: number('mostTurns', draft.mostTurns, '2.25'),
    turnsPerSize: number('turnsPerSize', draft.turnsPerSize, '1.25'),
    percentPerSize: number('percentPerSize', draft.percentPerSize, '6'),
    jets: readPilotJets(draft.jets, reader),
  };
}

/** "35 37.5 40"; a comma with one digit behind it is a decimal comma. */
function readPilotJets(text: string, reader: FieldReader): readonly number[] | undefined {
  const sizes = readSizes(text);
  if (sizes.ok) return sizes.value;
  if (sizes.reason.code === 'empty') return [];
  reader.complain('pilot.jets', `“${sizes.reason.text}” is not a jet size. For example: 35 37.5 40.`);
  return undefined;
}

export function readNeedle(draft: NeedleDraft, reader: FieldReader): unknown {
  if (!draft.on) return undefined;
  const number = groupReader(reader, 'needle');
  return {
    groove: number('groove', draft.groove, '3'),
    grooves: number('grooves', draft.grooves, '5'),
    percentPerGroove: number('percentPerGroove', draft.percentPerGroove, '2.5'),
  };
}

export function readFuelDensity(draft: MachineDraft['fuelDensity'], reader: FieldReader): unknown {
  if (!draft.on) return undefined;
  return {
    offsetC: reader.temperatureStepC({ name: 'fuelDensity.offset', text: draft.offset, example: '0' }),
    baselineC: reader.temperatureC({ name: 'fuelDensity.baseline', text: draft.baseline, example: '20' }),
  };
}
