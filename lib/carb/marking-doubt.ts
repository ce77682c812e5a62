import { normaliseBox } from './box';
import type { Machine } from './machine';

/** Why the number on a jet may mean something else than was said; `size` is the jet that gives it away. */
export type MarkingDoubt = {
  readonly code: 'bore-too-wide' | 'bore-too-narrow' | 'bore-in-tens' | 'flow-between-fives';
  readonly size: number;
};

/** Holes of main jets [1/100 mm]: about 0.5 to 2.5 mm. Common practice, no source. */
const NARROWEST_BORE = 50;
const WIDEST_BORE = 250;
/** Flow marks go in tens or fives, bore marks in 2 to 3. Common practice, no source. */
const FLOW_STEP = 5;
const WIDE_STEP = 10;
/** So many sizes that all are tens are no chance. Judgement. */
const ENOUGH_TENS = 3;

type Jets = Pick<Machine, 'marking' | 'box' | 'carburettors'>;

/**
 * Whether the jets look as if they were marked the other way: a hole that no main jet has, or steps that go with the
 * other marking. A question, never a proof; null where nothing speaks against the marking. A wrong marking halves or
 * doubles every step, so the engine ends up lean on one side of the baseline.
 */
export function markingDoubt({ marking, box, carburettors }: Jets): MarkingDoubt | null {
  if (marking.kind === 'list') return null;
  const owned = normaliseBox(box).map(({ size }) => size);
  const sizes = [...new Set([...carburettors.map(({ main }) => main), ...owned])];
  return marking.kind === 'bore' ? boreDoubt(sizes) : flowDoubt(sizes);
}

function boreDoubt(sizes: readonly number[]): MarkingDoubt | null {
  const wide = sizes.find((size) => size > WIDEST_BORE);
  if (wide !== undefined) return { code: 'bore-too-wide', size: wide };
  const narrow = sizes.find((size) => size < NARROWEST_BORE);
  if (narrow !== undefined) return { code: 'bore-too-narrow', size: narrow };
  const tens = sizes.length >= ENOUGH_TENS && sizes.every((size) => size % WIDE_STEP === 0);
  return tens ? { code: 'bore-in-tens', size: sizes[0]! } : null;
}

function flowDoubt(sizes: readonly number[]): MarkingDoubt | null {
  const odd = sizes.find((size) => size >= NARROWEST_BORE && size <= WIDEST_BORE && size % FLOW_STEP !== 0);
  return odd === undefined ? null : { code: 'flow-between-fives', size: odd };
}
