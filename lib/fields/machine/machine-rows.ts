import { INTAKE_CHOICES } from '@/lib/carb/intake-choices';
import { LIMIT_CHOICES } from '@/lib/carb/limits';
import type { MachineJson } from '@/lib/contract/machine';
import { airRowsAt } from '@/lib/fields/air/air-rows';
import { type DraftOf, type FieldTable, groupOf } from '@/lib/fields/field-row';
import { fieldRowsFor } from '@/lib/fields/field-rows-for';
import { fieldLabel } from '@/lib/fields/table-values';
import { temperatureStepIn } from '@/lib/units/choice';
import { numberText, percentText } from '@/lib/units/entry-text';
import { PROOF_CHOICES, PROOF_HINTS } from '@/lib/words/verdict-choices';
import { FUEL_DENSITY, RESPONSE } from './advanced-rows';
import { NEEDLE, PILOT, TRIM } from './circuit-rows';

const f = fieldRowsFor<MachineJson>();
const air = airRowsAt<MachineJson>('baseline.air');

/** Of the machine itself, but at the foot of the form, where all of them are drawn: what most racers never touch. */
const FOOT = {
  richPowerLoss: f.number({
    label: 'Power lost to richness (k)',
    at: 'richPowerLoss',
    blank: '2',
    example: '2',
    hint: 'Power = 1 − k × drift² on the rich side. 2 is an assumption.',
  }),
  ratedPowerHp: f.number({
    label: 'Rated power',
    at: 'ratedPowerHp',
    optional: true,
    unit: 'hp',
    example: '180',
    hint: 'Optional; shows shares of power in horsepower. It changes no plan.',
  }),
};

// The keys of a literal, which keys() forgets.
export const ADVANCED = Object.keys(FOOT) as readonly (keyof typeof FOOT)[];

const TOP = groupOf({
  name: f.text({
    label: 'Name',
    at: 'name',
    needed: 'Give the machine a name, such as “Blue 600”.',
    maxLength: 80,
    autoComplete: 'off',
  }),
  /** How many, '1' to '6'. */
  carburettors: f.choice({
    label: 'Carburettors',
    blank: '2',
    options: ['1', '2', '3', '4', '5', '6'].map((count) => ({ value: count, label: count })),
  }),
  staggered: f.flag({ label: 'Different jets in the carburettors' }),
  main: f.raw({ label: 'Main jet', at: 'carburettors', signed: false }),
  marking: f.choice({
    label: 'What the number on a jet means',
    blank: 'flow',
    options: [
      { value: 'flow', label: 'Flow' },
      { value: 'bore', label: 'Bore' },
      { value: 'list', label: 'My own list' },
    ],
    hint: {
      flow: 'The number goes with how much fuel passes: a 420 flows 5 % more than a 400.',
      bore: 'The number is the hole in hundredths of a millimetre: a 162 has a hole of 1.62 mm.',
      list: 'For jets of mixed makes, or measured ones.',
    },
  }),
  /** The marking that was questioned and found right; '' where none was. */
  markingSure: f.kept<'' | 'flow' | 'bore'>(''),
  list: f.raw({
    label: 'Your jets and their areas',
    at: 'jetMarking',
    control: 'area',
    hint: 'One jet per line: the number on it, then its area or flow in any unit. 410 1.03',
  }),
  swapWorthPercent: f.number({
    label: 'What a swap is worth',
    at: 'swapWorthPercent',
    optional: true,
    unit: '%',
    example: '1.5',
  }),
  ...FOOT,
});

const BOX = groupOf({
  how: f.choice({
    label: 'How to enter the box',
    blank: 'typed',
    options: [
      { value: 'typed', label: 'Type them' },
      { value: 'range', label: 'From … to …' },
    ],
  }),
  text: f.raw({
    label: 'Jets in the box',
    at: 'box',
    control: 'area',
    rows: 3,
    hint: 'Size, then x and how many, those in the engine too: 400x3 410x3 420',
  }),
  from: f.number({ label: 'Smallest', example: '380' }),
  to: f.number({ label: 'Largest', example: '460' }),
  by: f.number({ label: 'Step', blank: '10', example: '10' }),
  each: f.number({ label: 'How many of each', blank: '2', example: '3' }),
});

const BASELINE = groupOf(
  {
    ...air.rows,
    judged: f.choice({
      label: 'How the jets were judged',
      at: 'baseline.judged',
      blank: 'right',
      options: PROOF_CHOICES,
      hint: PROOF_HINTS,
    }),
    provenOn: f.text({ label: 'Proven on', at: 'baseline.provenOn', optional: true, type: 'date' }),
    note: f.text({ label: 'Note', at: 'baseline.note', optional: true, maxLength: 500 }),
    sameIntake: f.flag({ label: 'The intake was the same when the jets were proven', blank: true }),
    intakeOffset: f.step({ label: 'Warmer than outside then', at: 'baseline.intakeOffsetC', example: '5' }),
  },
  { as: air.as, asked: { intakeOffset: ({ sameIntake }) => !sameIntake } },
);

const INTAKE = groupOf(
  {
    choice: f.choice({
      label: 'How the engine draws its air',
      blank: 'ducted',
      options: [
        { value: 'ducted', label: 'Ducted airbox' },
        { value: 'open', label: 'Open filters' },
        { value: 'hood', label: 'Under the hood' },
        { value: 'own', label: 'Measured' },
      ],
      hint: 'The number is common practice; a thermometer at the carburettor is better.',
    }),
    offset: f.step({ label: 'Warmer than outside', at: 'intakeOffsetC', example: '5' }),
  },
  {
    sets: {
      // Whole degrees, for more is not known of a choice.
      choice: (choice, { temperature }) =>
        choice === 'own'
          ? {}
          : { offset: numberText(temperatureStepIn(INTAKE_CHOICES[choice], temperature), 0) },
      offset: () => ({ choice: 'own' }),
    },
  },
);

function limitTexts(choice: keyof typeof LIMIT_CHOICES) {
  const { lean, rich, risk } = LIMIT_CHOICES[choice];
  return { leanPercent: percentText(lean), richPercent: percentText(rich), risk: percentText(risk) };
}

const RACE = limitTexts('race');
const own = () => ({ choice: 'own' as const });

const LIMITS = groupOf(
  {
    choice: f.choice({
      label: 'How careful',
      blank: 'race',
      options: [
        { value: 'race', label: 'Race' },
        { value: 'trail', label: 'Trail' },
        { value: 'break-in', label: 'Break-in' },
        { value: 'own', label: 'My own' },
      ],
      hint: {
        race: 'You stand by the machine and want little richness.',
        trail: 'One setting for the whole day, far from the trailer.',
        'break-in': 'A fresh engine must never be lean and may well be rich.',
        own: 'Your numbers.',
      },
    }),
    leanPercent: f.number({
      label: 'Lean limit',
      at: 'limits.leanPercent',
      blank: RACE.leanPercent,
      unit: '%',
      example: '2',
      hint: 'Leaner than good.',
    }),
    richPercent: f.number({
      label: 'Rich limit',
      at: 'limits.richPercent',
      blank: RACE.richPercent,
      unit: '%',
      example: '5',
      hint: 'Richer than good.',
    }),
    risk: f.percent({
      label: 'Risk of lean',
      at: 'limits.risk',
      blank: RACE.risk,
      example: '5',
      hint: 'Accepted for a run.',
      within: { least: 0.001, most: 0.5, words: 'Type a percentage from 0.1 to 50.' },
    }),
  },
  {
    sets: {
      choice: (choice) => (choice === 'own' ? {} : limitTexts(choice)),
      leanPercent: own,
      richPercent: own,
      risk: own,
    },
  },
);

/** A machine, in the order of its form. */
export const MACHINE = {
  top: TOP,
  box: BOX,
  baseline: BASELINE,
  intake: INTAKE,
  limits: LIMITS,
  trim: TRIM,
  pilot: PILOT,
  needle: NEEDLE,
  response: RESPONSE,
  fuelDensity: FUEL_DENSITY,
} satisfies FieldTable;

export type MachineDraft = DraftOf<typeof MACHINE> & {
  /** One for each of six carburettors; those beyond the count keep their text. */
  readonly mains: readonly string[];
};

/** What the field of this name is called on the screen and in the list of complaints. */
export function machineLabel(name: string): string {
  const main = /^mains\.(\d+)$/.exec(name);
  return main === null ? fieldLabel(MACHINE, name) : `Main jet ${Number(main[1]) + 1}`;
}
