import type { Lane } from '@/lib/carb/lane';
import type { DriftState, PlanHour } from '@/lib/plan/types';
import { type Instant, instant } from '@/lib/time/instant';

export type JetSpan = { readonly state: DriftState; readonly from: Instant; readonly to: Instant };

type Through = {
  readonly hours: readonly PlanHour[];
  readonly carburettor: number;
  readonly from: Instant;
  readonly to: Instant;
};

/** How a jet would stand through a stretch of the night if it stayed in: by the expected air, without its spread. */
export function jetSpans(lane: Lane, { hours, carburettor, from, to }: Through): readonly JetSpan[] {
  const points = hours.flatMap(({ at, ideal }) => {
    const size = ideal[carburettor];
    return size === undefined ? [] : [{ at, size }];
  });
  const edges = points.slice(1).flatMap((after, i) => {
    const before = points[i]!;
    return [lane.richEdge, lane.leanEdge].flatMap((edge) => {
      const share = (edge - before.size) / (after.size - before.size);
      return share > 0 && share < 1 ? [before.at + share * (after.at - before.at)] : [];
    });
  });
  const cuts = [from, ...edges.filter((at) => at > from && at < to).sort((a, b) => a - b), to];
  return joined(
    cuts.slice(1).flatMap((end, i) => {
      const start = cuts[i]!;
      const size = sizeAt(points, (start + end) / 2);
      return size === null ? [] : [{ state: stateIn(lane, size), from: instant(start), to: instant(end) }];
    }),
  );
}

function stateIn({ leanEdge, richEdge }: Lane, ideal: number): DriftState {
  if (ideal > leanEdge) return 'lean';
  return ideal < richEdge ? 'rich' : 'right';
}

type Point = { readonly at: number; readonly size: number };

function sizeAt(points: readonly Point[], at: number): number | null {
  const index = points.findIndex((point) => point.at >= at);
  const [before, after] = [points[index - 1], points[index]];
  if (before === undefined || after === undefined) return null;
  return before.size + ((at - before.at) / (after.at - before.at)) * (after.size - before.size);
}

/** Spans of one state that touch are one span. */
function joined(spans: readonly JetSpan[]): readonly JetSpan[] {
  const starts = spans.filter((span, i) => span.state !== spans[i - 1]?.state);
  const end = spans.at(-1)?.to;
  return starts.map((span, i) => ({ ...span, to: starts[i + 1]?.from ?? end ?? span.to }));
}
