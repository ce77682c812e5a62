import type { HangingIdleStep } from '@/lib/carb/hanging-idle';
import type { Pilot } from '@/lib/carb/machine';
import { type PilotAdvice, settableTurns } from '@/lib/carb/pilot';
import type { ScrewDial } from '@/lib/trail/dial';
import type { BigPilotCost } from '@/lib/trail/pilot-cost';
import type { UnitChoice } from '@/lib/units/choice';
import { formatEighths, formatPercent, formatTemperature } from '@/lib/units/format';
import { type Ratio, ratio } from '@/lib/units/quantity';
import { capital, listing } from './listing';

/** Turns as they are set, by eighths and to the rich side. */
export function turnsText(turns: number, pilot: Pilot): string {
  return formatEighths(settableTurns(turns, pilot));
}

/** "¾ turn", "1 turn", "1⅛ turns". */
export function turnWord(turns: number): string {
  return turns <= 1 ? 'turn' : 'turns';
}

/** What a number of turns means. */
export const TURNS_OUT =
  'Turn it in, counting, until it sits lightly: that is the number, such as 1 1/2. Never tighten it. Then turn it back out as far.';

/** What the drawing of a screw shows, in words. */
export function screwDrawingWords(screw: Pilot['screw']): string {
  return screw === 'fuel'
    ? 'A carburettor from the side. The fuel screw sits between the slide and the engine. Turned out it lets more fuel through: richer.'
    : 'A carburettor from the side. The air screw sits between the air box and the slide. Turned out it lets more air through: leaner.';
}

/** What the drawing of a needle shows, in words. */
export const CLIP_DRAWING_WORDS =
  'A needle with its clip in one of five grooves. Groove 1 is at the top and leanest. A clip lower down lifts the needle: richer.';

/** Which way is richer, said once beside every screw. */
export function screwWaySentence({ screw }: Pilot): string {
  return screw === 'fuel'
    ? 'A fuel screw meters fuel: out is richer, in is leaner.'
    : 'An air screw meters air: in is richer, out is leaner.';
}

/** What the screw can and cannot do in one air. */
export function pilotSentence(advice: PilotAdvice, pilot: Pilot): string {
  const turns = `${turnsText(advice.turns, pilot)} ${turnWord(advice.turns)} out`;
  switch (advice.act) {
    case 'turn':
      return `Pilot ${pilot.jet} stays, ${pilot.screw} screw ${turns}.`;
    case 'change-jet':
      return `The screw’s range ends: put in pilot ${advice.jet}, ${pilot.screw} screw ${turns}.`;
    case 'none-left':
      return advice.logLeft < 0
        ? `No pilot owned is rich enough: ${advice.jet} with the screw at its rich end still lacks ${formatPercent(shareOf(advice.logLeft))} fuel. Borrow the next size up.`
        : `No pilot owned is lean enough: ${advice.jet} with the screw at its lean end is ${formatPercent(shareOf(advice.logLeft))} rich. It will load up at idle.`;
  }
}

/** How far off the fuel is, from the log of delivered over wanted. */
function shareOf(log: number): Ratio {
  return ratio(Math.abs(Math.expm1(log)));
}

/** An idle that hangs after a hard run, step by step. Common practice, no source. */
export function hangingIdleSentence(step: HangingIdleStep): string {
  switch (step.act) {
    case 'find-leak':
      return 'First rule out an air leak or a worn crank seal: they make the engine lean and can seize it. Stop it, look at boots, clamps and gaskets, and have it pressure tested. Do not ride it hard before. No screw or pilot cures a leak.';
    case 'lower-idle':
      return 'Then lower the idle. A high stop hangs by itself; start again from a normal idle.';
    case 'richer-by-screw':
      return `Then the screw, an eighth of a turn ${step.way} at a time: ${formatEighths(step.turnsLeft, 'down')} ${turnWord(step.turnsLeft)} left that way.`;
    case 'bigger-pilot':
      return step.jet === null
        ? 'A bigger pilot last, and none is owned: borrow the next size.'
        : `A bigger pilot last: ${step.jet}. It is richer everywhere below a quarter throttle, all day.`;
  }
}

/** What a pilot one size too big costs, with the screw left and with it run in. */
export function bigPilotSentence({ jet, screwLeft, screwSet }: BigPilotCost, pilot: Pilot): string {
  const name = jet === null ? 'One size up (none is owned)' : `Pilot ${jet}`;
  const left = `with the screw left alone it burns ${formatPercent(screwLeft.richer, 1)} more fuel from idle to a quarter throttle and gives away ${formatPercent(screwLeft.powerLost, 1)} of the power there`;
  const lean = pilot.screw === 'fuel' ? 'in' : 'out';
  const set =
    screwSet.richer < 0.001
      ? `run ${lean} to ${turnsText(screwSet.turns, pilot)} ${turnWord(screwSet.turns)} it costs nothing but the range that is left`
      : `with the screw at its lean end it still burns ${formatPercent(screwSet.richer, 1)} more`;
  return `${name} where the right one would do: ${left}; ${set}.`;
}

/** Where the next pilot takes over, colder and warmer than the baseline. */
export function takeoverSentence({ takeovers, pilot, baseline }: ScrewDial, units: UnitChoice): string {
  if (takeovers.length === 0) return `Pilot ${pilot.jet} serves every temperature shown.`;
  const parts = takeovers.map((takeover) => {
    const colder = takeover.at <= baseline.temperature;
    const { jet, reach } = colder ? takeover.colder : takeover.warmer;
    const side = `${colder ? 'below' : 'above'} ${formatTemperature(takeover.at, units, 0)}`;
    return reach === 'held'
      ? `${side} ${jet} stands with its screw at the end and no pilot owned reaches further`
      : `${side} pilot ${jet} takes over`;
  });
  return `${capital(listing(parts))}.`;
}
