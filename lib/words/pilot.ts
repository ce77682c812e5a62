import type { HangingIdleStep } from '@/lib/carb/hanging-idle';
import type { ScrewKind } from '@/lib/carb/machine';
import type { PilotAdvice } from '@/lib/carb/pilot';
import { formatNumber, formatPercent } from '@/lib/units/format';
import { ratio } from '@/lib/units/quantity';

const turnsText = (turns: number): string => `${formatNumber(Math.round(turns * 8) / 8, 2)} turns out`;

/** "Fuel screw 1.38 turns out with pilot 45." */
export function pilotSentence({ act, jet, turns, logLeft }: PilotAdvice, screw: ScrewKind): string {
  const place = `${screw === 'fuel' ? 'Fuel' : 'Air'} screw ${turnsText(turns)}`;
  if (act === 'turn') return `${place}; the pilot stays ${jet}.`;
  if (act === 'change-jet')
    return `The screw’s range ends here: fit pilot ${jet}, then ${place.toLowerCase()}.`;
  const side = logLeft < 0 ? 'lean' : 'rich';
  return `No pilot you own reaches: with ${jet} and the ${place.toLowerCase()} it stays ${formatPercent(ratio(Math.abs(Math.expm1(logLeft))), 1)} ${side}.`;
}

/** What to try on an idle that hangs high, in this order. */
export function hangingIdleSentence(step: HangingIdleStep): string {
  switch (step.act) {
    case 'lower-idle':
      return 'Lower the idle stop first: a slide held open too far hangs by itself.';
    case 'richer-by-screw':
      return `Then richen by the screw: a quarter turn ${step.way} at a time; ${formatNumber(step.turnsLeft, 2)} turns are left that way.`;
    case 'bigger-pilot':
      return step.jet === null
        ? 'Last, a bigger pilot; you own none, so one would have to be bought. It is rich everywhere below.'
        : `Last, pilot ${step.jet}: it is rich everywhere below.`;
  }
}
