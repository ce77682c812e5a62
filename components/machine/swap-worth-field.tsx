'use client';

import { useEffect, useRef } from 'react';
import { useHash } from '@/components/ui/use-hash';
import { usualSwapWorth } from '@/lib/carb/swap-worth';
import type { MachineDraft } from '@/lib/fields/machine/machine-rows';
import { horsepowerToWatt } from '@/lib/units/convert';
import { readNumber } from '@/lib/units/entry';
import { ratio } from '@/lib/units/quantity';
import { swapWorthHint } from '@/lib/words/worth';
import type { MachineFields } from './machine-fields';
import { SWAP_WORTH } from './swap-worth-hash';

/** What a swap of the jets must save to be made for power; whoever was sent here stands in it at once. */
export function SwapWorthField({ draft, field }: MachineFields) {
  const asked = useHash() === SWAP_WORTH;
  const place = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (asked) place.current?.querySelector('input')?.focus();
  }, [asked]);
  return <div ref={place}>{field('swapWorthPercent', { hint: hintOf(draft.value) })}</div>;
}

/** Where a text is no number that could be saved, the hint tells what counts without it. */
function hintOf({ swapWorthPercent, carburettors, ratedPowerHp }: MachineDraft): string {
  const usual = usualSwapWorth(Number(carburettors));
  const own = numberWithin(swapWorthPercent, 0, 20);
  const horsepower = numberWithin(ratedPowerHp, 0.1, 2000);
  return swapWorthHint({
    swap: own === null ? usual : ratio(own / 100),
    usual,
    ratedPower: horsepower === null ? null : horsepowerToWatt(horsepower),
  });
}

function numberWithin(text: string, least: number, most: number): number | null {
  const read = readNumber(text);
  return read.ok && read.value >= least && read.value <= most ? read.value : null;
}
