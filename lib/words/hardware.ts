import type {
  HardwareCaution,
  HardwareKind,
  HardwareProblem,
  HardwareShift,
  ShiftSource,
} from '@/lib/carb/hardware';
import type { BaselineShift } from '@/lib/carb/machine';
import { USUAL_LOG_STEP } from '@/lib/carb/size-step';
import type { UnitChoice } from '@/lib/units/choice';
import {
  formatNumber,
  formatPercent,
  formatPower,
  formatSignedNumber,
  formatSignedPercent,
  formatTemperatureStep,
} from '@/lib/units/format';
import { type KelvinDifference, kelvinDifference, type Ratio, ratio, type Watt } from '@/lib/units/quantity';
import { horsepowerOf } from './power-words';

const KINDS: Readonly<Record<HardwareKind, string>> = {
  bored: 'Carburettor bored',
  'airbox-off': 'Airbox removed',
  'airbox-on': 'Airbox fitted',
  'open-filters': 'Open filters fitted',
  pipe: 'Other pipe',
  'big-bore': 'Big bore',
  compression: 'Compression changed',
  fuel: 'Other fuel',
};

export function hardwareKindText(kind: HardwareKind): string {
  return KINDS[kind];
}

/** "Carburettor bored, 2 mm". */
export function hardwareText({
  kind,
  amount,
}: {
  readonly kind: HardwareKind;
  readonly amount: number | null;
}): string {
  return [KINDS[kind], amountText(kind, amount)].filter((part) => part !== '').join(', ');
}

function amountText(kind: HardwareKind, amount: number | null): string {
  if (kind === 'fuel') return amount === null ? 'race fuel' : `${formatPercent(ratio(amount))} ethanol`;
  if (amount === null) return '';
  if (kind === 'bored') return `${formatNumber(amount, 1)} mm`;
  return kind === 'big-bore' ? `${formatNumber(amount)} % larger` : '';
}

const SOURCES: Readonly<Record<ShiftSource, string>> = {
  stoichiometry: 'from the stoichiometry of the fuel',
  'elementary-carburettor': 'the venturi draws fuel in step with the air',
  'common practice, no source': 'common practice, no source',
};

export function shiftSourceText(source: ShiftSource): string {
  return SOURCES[source];
}

/** "+2.0 sizes (+5.1 %), give or take 1.5 sizes": a size is taken as the usual 2.5 %. */
export function shiftText({ log, sd }: BaselineShift): string {
  const sizes = formatSignedNumber(log / USUAL_LOG_STEP, 1);
  const area = formatSignedPercent(ratio(Math.expm1(log)), 1);
  return `${sizes} sizes (${area}), give or take ${formatNumber(sd / USUAL_LOG_STEP, 1)} sizes`;
}

const CAUTIONS: Readonly<Record<HardwareCaution, string>> = {
  'less-cutaway-if-bottom-lean':
    'If it is lean just off idle now, a slide with less cutaway or a richer pilot is the cure, not the main.',
  'seems-a-gain-if-it-was-rich':
    'If it was rich before, this alone leans it and feels like power. Compare fairly before you credit the part.',
  'less-detonation-margin': 'There is less margin before detonation: start rich and check the fuel’s octane.',
  'check-pilot-and-needle': 'Check pilot and needle too: their share moved with it.',
  'fuel-parts-must-bear-ethanol': 'Hoses, floats and seals must bear ethanol.',
};

export function hardwareCautionSentence(caution: HardwareCaution): string {
  return CAUTIONS[caution];
}

/** "Airbox removed: main +2.0 sizes (+5.1 %), give or take 1.5 sizes. Common practice, no source." */
export function hardwareShiftSentence(shift: HardwareShift): string {
  return `The main moves ${shiftText(shift)}; ${shiftSourceText(shift.source)}.`;
}

export function hardwareProblemSentence(problem: HardwareProblem): string {
  switch (problem.code) {
    case 'amount-missing':
      return `${KINDS[problem.kind]}: say by how much (${amountUnitText(problem.kind)}).`;
    case 'amount-out-of-range':
      return `${KINDS[problem.kind]}: ${problem.amount} is outside 0 to ${problem.most} (${amountUnitText(problem.kind)}). Check the number.`;
  }
}

function amountUnitText(kind: HardwareKind): string {
  if (kind === 'bored') return 'millimetres';
  return kind === 'big-bore' ? 'percent of displacement' : 'share of ethanol';
}

/** What drawing warmer air costs: "Air 50 °F warmer costs 4.6 % of power, 7 hp of 150." */
export function intakeCostSentence(given: {
  readonly warmer: KelvinDifference;
  readonly cost: Ratio;
  readonly ratedPower: Watt | null;
  readonly units: UnitChoice;
}): string {
  const { warmer, cost, ratedPower, units } = given;
  const much = formatTemperatureStep(kelvinDifference(Math.abs(warmer)), units, 0);
  if (Math.abs(warmer) < 0.5) return 'It draws the air this choice stands for already.';
  const share = formatPercent(ratio(Math.abs(cost)), 1);
  const horsepower = horsepowerOf(cost, ratedPower);
  const power =
    ratedPower === null || horsepower === null ? '' : `, ${horsepower} of ${formatPower(ratedPower)}`;
  return warmer > 0
    ? `Air ${much} warmer costs ${share} of the power${power}.`
    : `Air ${much} cooler brings ${share} of power${power}.`;
}

/** What the jets of now would be in the warmer air. */
export function intakeMixtureSentence(drift: Ratio): string {
  if (Math.abs(drift) < 0.0005) return 'The mixture stays as it is.';
  const side = drift > 0 ? 'rich' : 'lean';
  return `With the jets left as they are the mixture would move ${formatSignedPercent(drift, 1)} (${side}).`;
}
