import type { Limits, Machine } from '@/lib/carb/machine';
import type { RideCircuit, RideCircuits, RideClip, RidePilot } from '@/lib/trail/ride-circuits';
import { formatPercent, formatSignedPercent } from '@/lib/units/format';
import { type Ratio, ratio } from '@/lib/units/quantity';
import { momentText } from './ride';
import { turnsText, turnWord } from './screw';
import type { Clock } from './times';
import type { Voice } from './voice';

type Told = { readonly machine: Machine; readonly voice: Voice; readonly clock: Clock };

/** Screw, pilot and clip for the whole ride, each with what it costs at its worst. */
export function circuitSentences({ pilot, clip }: RideCircuits, told: Told): readonly string[] {
  return [
    pilot === null
      ? 'The pilot of this machine is not described. Add it on the machines page to have the screw for this ride.'
      : pilotSentence(pilot, told),
    ...(clip === null ? [] : [clipSentence(clip, told)]),
  ];
}

function pilotSentence({ advice, ...cost }: RidePilot, told: Told): string {
  const { pilot, limits } = told.machine;
  if (pilot === null) return '';
  const turns = `${pilot.screw} screw ${turnsText(advice.turns, pilot)} ${turnWord(advice.turns)} out`;
  const jet = advice.jet === pilot.jet ? `pilot ${advice.jet} stays` : `put in pilot ${advice.jet}`;
  const lean = cost.thickest.drift < -limits.lean;
  const what = `Idle to a quarter throttle, for the whole ride: ${jet}, ${turns}.`;
  return lean
    ? `${what} No pilot owned is rich enough: in the thickest air it is ${formatPercent(leannessOf(cost), 1)} lean. Do not hold a steady light throttle there.`
    : `${what} ${worstText(cost, told, limits)}`;
}

function clipSentence({ groove, beyondNeedle, ...cost }: RideClip, told: Told): string {
  const { limits } = told.machine;
  const what = `Quarter to three quarters, for the whole ride: clip in groove ${groove} from the top.`;
  return beyondNeedle && cost.thickest.drift < -limits.lean
    ? `${what} The needle ends there: in the thickest air it is ${formatPercent(leannessOf(cost), 1)} lean. Do not hold half throttle there.`
    : `${what} ${worstText(cost, told, limits)}`;
}

const leannessOf = ({ thickest }: RideCircuit): Ratio => ratio(Math.abs(thickest.drift));

/** "At worst (26 °F at 10:30) it is 9.1 % richer: that costs 1.2 % of the power there." */
function worstText({ worst }: RideCircuit, { voice, clock }: Told, { rich }: Limits): string {
  const drift = formatSignedPercent(worst.drift, 1);
  const where = `At worst (${momentText(worst.at, voice, clock)})`;
  if (worst.drift <= 0.005) return `${where} it is as good as right: ${drift}.`;
  const load =
    worst.drift > rich ? ' It may load up there: clear it now and then, and carry a spare plug.' : '';
  return `${where} it is ${formatPercent(worst.drift, 1)} richer: that costs ${formatPercent(worst.powerLost, 1)} of the power there.${load}`;
}
