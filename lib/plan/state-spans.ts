import type { DriftState } from '@/lib/plan/types';
import type { Picture } from './night-picture';

/** A stretch of the picture in which the baseline keeps one state. */
export type StateSpan = { readonly state: DriftState; readonly from: number; readonly to: number };

/** The stretches between crossings, from edge to edge of the picture. */
export function stateSpans({
  hours,
  crossings,
  from,
  to,
}: Pick<Picture, 'hours' | 'crossings' | 'from' | 'to'>): readonly StateSpan[] {
  const first = hours.findLast(({ at }) => at <= from) ?? hours[0];
  if (first === undefined) return [];
  const edges = [
    { at: from as number, state: first.baselineState },
    ...crossings
      .filter(({ at }) => at > from && at < to)
      .map((crossing) => ({ at: crossing.at as number, state: crossing.to })),
  ];
  return edges.map(({ at, state }, i) => ({ state, from: at, to: edges[i + 1]?.at ?? to }));
}
