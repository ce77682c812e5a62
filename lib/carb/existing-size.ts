import { withoutDust } from '@/lib/units/entry-text';
import { jetArea } from './jets';
import type { Machine } from './machine';
import { NARROWEST_LOG_STEP, USUAL_LOG_STEP, WIDEST_LOG_STEP } from './size-step';

type Jets = Pick<Machine, 'marking' | 'box' | 'carburettors'>;

/** Steps jets are made in. Common practice, no source. */
const MADE_STEPS: readonly [number, ...number[]] = [0.5, 1, 2, 2.5, 5, 10, 20, 25, 50];

/** A size that sits on a jet must not become the next one by the last bit. */
const SAME = 1e-9;

/** Jets that are known to be made: the box, and what the carburettors were proven with. */
function knownSizes({ box, carburettors }: Jets): readonly number[] {
  const all = [...box.map(({ size }) => size), ...carburettors.map(({ main }) => main)];
  return [...new Set(all)].sort((a, b) => a - b);
}

/** What neighbours among the known sizes differ by, where that is a step and not a missing jet. */
function knownStep(jets: Jets, sizes: readonly number[]): number | null {
  const steps = sizes.slice(1).flatMap((size, i) => {
    const gap = Math.log(jetArea(jets.marking, size) / jetArea(jets.marking, sizes[i]!));
    return gap >= NARROWEST_LOG_STEP && gap <= WIDEST_LOG_STEP ? [size - sizes[i]!] : [];
  });
  return steps.length === 0 ? null : Math.min(...steps);
}

/** The step jets are made in that comes nearest to one usual size of the jets the machine was proven with. */
function usualStep({ marking, carburettors }: Jets): number {
  const main = Math.max(...carburettors.map((each) => each.main));
  const wide = main * (marking.kind === 'bore' ? USUAL_LOG_STEP / 2 : USUAL_LOG_STEP);
  const off = (step: number) => Math.abs(Math.log(step / wide));
  return MADE_STEPS.reduce((best, step) => (off(step) < off(best) ? step : best), MADE_STEPS[0]);
}

/**
 * The smallest main jet that exists and passes at least what `size` would: of the person's own list, else of the box or
 * of the series its steps imply. A size that is asked for is never one that nobody can buy, nor a leaner one.
 *
 * @param size wanted, in the machine's marking; between sizes as a rule
 * @returns null where the person's own list ends below it
 */
export function nextSizeUp(jets: Jets, size: number): number | null {
  const enough = (each: number) => each >= size * (1 - SAME);
  if (jets.marking.kind === 'list') {
    const listed = jets.marking.jets.map((jet) => jet.size).filter(enough);
    return listed.length === 0 ? null : Math.min(...listed);
  }
  const known = knownSizes(jets);
  const owned = known.find(enough) ?? Number.POSITIVE_INFINITY;
  const from = known.findLast((each) => !enough(each)) ?? known[0] ?? size;
  const step = knownStep(jets, known) ?? usualStep(jets);
  const made = from + Math.ceil((size - from) / step - SAME) * step;
  return Math.min(owned, withoutDust(made));
}

/** The same for every carburettor; null where one of them has none. */
export function nextSizesUp(jets: Jets, sizes: readonly number[]): readonly number[] | null {
  const made = sizes.flatMap((size) => nextSizeUp(jets, size) ?? []);
  return made.length === sizes.length ? made : null;
}
