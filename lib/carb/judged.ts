import type { BaselineShift, Box, JetMarking, Limits } from './machine';
import { logSizeStep } from './size-step';

/** How the baseline was judged: on the edge of lean, right, or a size rich. */
export type Judged = 'edge' | 'right' | 'size-rich';

/**
 * What a judgement says about the right jet area in the baseline's own air.
 *
 * `edge`: one step leaner would be lean, so the baseline sits on the lean limit and the right area is larger by it.
 * `right`: the baseline's own area. `size-rich`: one size smaller. The sds (a quarter of a size; half a size for a
 * counted size) are judgement, no source.
 */
export function judgedShift(
  judged: Judged,
  machine: {
    readonly marking: JetMarking;
    readonly box: Box;
    readonly limits: Limits;
    readonly main: number;
  },
): BaselineShift {
  const step = logSizeStep(machine, machine.main);
  if (judged === 'edge') return { log: -Math.log1p(-machine.limits.lean), sd: step / 4 };
  if (judged === 'size-rich') return { log: -step, sd: step / 2 };
  return { log: 0, sd: step / 4 };
}

/** Two independent shifts, one after the other. */
export function addShifts(a: BaselineShift, b: BaselineShift): BaselineShift {
  return { log: a.log + b.log, sd: Math.hypot(a.sd, b.sd) };
}
