import { withBib } from '@/lib/store/roster-names';
import { toldApart } from '@/lib/store/told-apart';
import type { SharedMachine } from './shared-night';

/** What the racers of a shared night are called: bib and name, else the machine; no two alike. */
export function sharedLabels(
  machines: readonly Pick<SharedMachine, 'machine' | 'racer' | 'bib'>[],
): readonly string[] {
  return toldApart(machines.map(({ machine, racer, bib }) => withBib(racer ?? machine.name, bib)));
}
