import { logDelivered } from '@/lib/carb/drift';
import type { Machine, Setting } from '@/lib/carb/machine';
import { swapWorth } from '@/lib/carb/swap-worth';
import { candidatesFor } from '@/lib/plan/candidates';
import type { DrawnNight } from './draw-night';

/** Power lost to a rich mixture over a run: k drift², mean of minutes and carburettors; lean gains nothing. */
export function richLoss(machine: Machine, setting: Setting, ideals: Float64Array): number {
  const delivered = logDelivered(machine, setting);
  let sum = 0;
  for (const each of delivered)
    for (const ideal of ideals) sum += machine.richPowerLoss * Math.max(0, Math.expm1(each - ideal)) ** 2;
  return sum / (delivered.length * ideals.length);
}

/** Share of a run's minutes in which a carburettor is leaner than the limit. */
export function leanShare(machine: Machine, setting: Setting, ideals: Float64Array): number {
  const threshold = Math.min(...logDelivered(machine, setting)) - Math.log1p(-machine.limits.lean);
  return ideals.filter((ideal) => ideal > threshold).length / ideals.length;
}

const NEVER = 1e6;

/** What the plan would do that knew every minute beforehand: never lean where the box allows, then power against swaps. */
export function perfectSettings({ machine, ideals, request }: DrawnNight): readonly Setting[] {
  const baseline: Setting = { mains: machine.carburettors.map(({ main }) => main), trim: null };
  const settings = candidatesFor(machine, baseline).map(({ setting }) => setting);
  const worth = request.options.worthIt ?? swapWorth(machine);
  const isBaseline = (setting: Setting) => setting.mains.join() === baseline.mains.join();
  let best = settings.map((setting) => ({ cost: isBaseline(setting) ? 0 : worth, path: [setting] }));
  for (const [run, minutes] of ideals.entries()) {
    const from = best;
    best = settings.map((setting, i) => {
      const cost = NEVER * leanShare(machine, setting, minutes) + richLoss(machine, setting, minutes);
      const before =
        run === 0
          ? from[i]!
          : from.reduce((a, b, j) => {
              const cheaper = b.cost + (j === i ? 0 : worth) < a.cost + (a === from[i] ? 0 : worth);
              return cheaper ? b : a;
            }, from[i]!);
      const swap = run > 0 && before !== from[i] ? worth : 0;
      const path = run === 0 ? [setting] : [...before.path, setting];
      return { cost: before.cost + swap + cost, path };
    });
  }
  return best.reduce((a, b) => (b.cost < a.cost ? b : a)).path;
}
