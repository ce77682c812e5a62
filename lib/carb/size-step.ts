import { jetArea } from './jets';
import type { Box, JetMarking } from './machine';

/** One main-jet size as a log ratio of area where the jets do not tell: 2.5 %. Common practice, no source. */
export const USUAL_LOG_STEP = Math.log(1.025);
/** A wider gap than this is a missing jet, a narrower one is no step that anybody makes. Judgement. */
export const WIDEST_LOG_STEP = Math.log(1.06);
export const NARROWEST_LOG_STEP = Math.log(1.008);

/**
 * What "one size" means near a jet, as a log ratio of area: the narrower of the gaps to its neighbours on the person's
 * own list, else in the box, else the usual 2.5 %.
 */
export function logSizeStep(jets: { readonly marking: JetMarking; readonly box: Box }, size: number): number {
  const { marking, box } = jets;
  const sizes = (marking.kind === 'list' ? marking.jets : box).map((jet) => jet.size);
  const here = Math.log(jetArea(marking, size));
  const gaps = sizes
    .map((other) => Math.abs(Math.log(jetArea(marking, other)) - here))
    .filter((gap) => gap >= NARROWEST_LOG_STEP && gap <= WIDEST_LOG_STEP);
  return gaps.length === 0 ? USUAL_LOG_STEP : Math.min(...gaps);
}
