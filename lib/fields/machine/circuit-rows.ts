import { readSizes } from '@/lib/carb/box-text';
import type { MachineJson } from '@/lib/contract/machine';
import { groupOf } from '@/lib/fields/field-row';
import { fieldRowsFor } from '@/lib/fields/field-rows-for';
import { fail, ok, type Result } from '@/lib/result/result';
import { numberText } from '@/lib/units/entry-text';
import { TURNS_OUT } from '@/lib/words/screw';

const f = fieldRowsFor<MachineJson>();

export const TRIM = groupOf(
  {
    on: f.flag({
      label: 'It has a fuel trim turned from outside',
      hint: 'Higher is richer. A step costs seconds, so the plan turns it before it swaps jets.',
    }),
    lowest: f.number({ label: 'Lowest position', at: 'trim.lowest', blank: '1', signed: true, example: '1' }),
    highest: f.number({
      label: 'Highest position',
      at: 'trim.highest',
      blank: '3',
      signed: true,
      example: '3',
    }),
    baseline: f.number({ label: 'Proven at', at: 'trim.baseline', blank: '2', signed: true, example: '2' }),
    percentPerPosition: f.number({
      label: 'Fuel per position',
      at: 'trim.percentPerPosition',
      unit: '%',
      example: '2',
    }),
  },
  { switch: { key: 'on', at: 'trim' } },
);

/** "35 37.5 40"; none is none. */
function readPilotJets(text: string): Result<readonly number[], string> {
  const sizes = readSizes(text);
  if (sizes.ok) return sizes;
  if (sizes.reason.code === 'empty') return ok([]);
  return fail(`“${sizes.reason.text}” is not a jet size. For example: 35 37.5 40.`);
}

export const PILOT = groupOf(
  {
    on: f.flag({
      label: 'Work out the pilot circuit too',
      hint: 'Turns as they were when the jets were proven, and how far the screw may go.',
    }),
    jet: f.number({ label: 'Pilot jet', at: 'pilot.jet', example: '40' }),
    screw: f.choice({
      label: 'Kind of screw',
      at: 'pilot.screw',
      blank: 'fuel',
      options: [
        { value: 'fuel', label: 'Fuel screw: out is richer' },
        { value: 'air', label: 'Air screw: out is leaner' },
      ],
    }),
    turns: f.turns({
      label: 'Turns out',
      at: 'pilot.turns',
      hint: TURNS_OUT,
      example: '1 1/4',
    }),
    leastTurns: f.turns({ label: 'Least turns', at: 'pilot.leastTurns', blank: '0.5', example: '0.5' }),
    mostTurns: f.turns({ label: 'Most turns', at: 'pilot.mostTurns', blank: '2.25', example: '2.25' }),
    turnsPerSize: f.turns({
      label: 'Turns per pilot size',
      at: 'pilot.turnsPerSize',
      blank: '1.25',
      example: '1.25',
    }),
    percentPerSize: f.number({
      label: 'Fuel per pilot size',
      at: 'pilot.percentPerSize',
      blank: '6',
      unit: '%',
      example: '6',
    }),
    jets: f.own<readonly number[]>({
      label: 'Pilot jets you own',
      at: 'pilot.jets',
      hint: 'For example 35 37.5 40; leave empty if you own only the one that is in.',
      read: readPilotJets,
      write: (sizes) => sizes.map((size) => numberText(size)).join(' '),
    }),
  },
  { switch: { key: 'on', at: 'pilot' } },
);

export const NEEDLE = groupOf(
  {
    on: f.flag({
      label: 'Work out the needle clip too',
      hint: 'Grooves count from the top of the needle; 1 is leanest.',
    }),
    groove: f.number({ label: 'Clip groove', at: 'needle.groove', blank: '3', example: '3' }),
    grooves: f.number({ label: 'Grooves in all', at: 'needle.grooves', blank: '5', example: '5' }),
    percentPerGroove: f.number({
      label: 'Fuel per groove',
      at: 'needle.percentPerGroove',
      blank: '2.5',
      unit: '%',
      example: '2.5',
    }),
  },
  { switch: { key: 'on', at: 'needle' } },
);
