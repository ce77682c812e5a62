import { usualSwapWorth } from '@/lib/carb/swap-worth';
import { MACHINE, type MachineDraft } from '@/lib/fields/machine/machine-rows';
import { optionLabel } from '@/lib/fields/table-values';
import { numberText } from '@/lib/units/entry-text';

/** "Ducted airbox, 5 °F warmer than outside". */
export function intakeNow({ intake, units }: MachineDraft): string {
  return `${optionLabel(MACHINE.intake.rows.choice, intake.choice)}, ${intake.offset.trim() || '?'} °${units.temperature} warmer than outside`;
}

/** "Race: lean 2 %, rich 5 %, risk 5 %". */
export function limitsNow({ limits }: MachineDraft): string {
  const percent = (text: string): string => `${text.trim() || '?'} %`;
  return `${optionLabel(MACHINE.limits.rows.choice, limits.choice)}: lean ${percent(limits.leanPercent)}, rich ${percent(limits.richPercent)}, risk ${percent(limits.risk)}`;
}

/** Which of the circuits beside the main are described. */
export function circuitsNow({ trim, pilot, needle }: MachineDraft): string {
  const on = [trim.on ? 'trim' : '', pilot.on ? 'pilot' : '', needle.on ? 'needle' : ''].filter(
    (name) => name !== '',
  );
  return on.length === 0 ? 'Left out' : on.join(', ');
}

/** "Default response, a swap is worth 1.5 %". */
export function advancedNow({ response, swapWorthPercent, carburettors }: MachineDraft): string {
  const worth = swapWorthPercent.trim() || numberText(usualSwapWorth(Number(carburettors)) * 100);
  return `${response.own ? 'Own response' : 'Default response'}, a swap is worth ${worth} %`;
}

/** "Not given, no date". */
export function baselineMoreNow({ baseline }: MachineDraft): string {
  const { humidityKind, humidity, provenOn } = baseline;
  const air =
    humidityKind === 'unknown'
      ? 'Not given'
      : `${optionLabel(MACHINE.baseline.rows.humidityKind, humidityKind)} ${humidity}`.trim();
  return provenOn === '' ? air : `${air}, ${provenOn}`;
}
