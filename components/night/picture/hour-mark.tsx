import type { PlanHour } from '@/lib/plan/types';

type Origin = PlanHour['origin'];
type MarkProps = {
  readonly cx?: number | undefined;
  readonly cy?: number | undefined;
  readonly payload?: { readonly at: number; readonly origin: Origin };
};

/** A typed hour is an open square, a forecast one a dot, one put in between or filled in a small ring. */
export function hourMark({ cx, cy, payload }: MarkProps) {
  const key = payload?.at;
  if (cx === undefined || cy === undefined || payload === undefined) return <g key={key} />;
  const open = { fill: 'var(--paper)', stroke: 'var(--ink)', strokeWidth: 1.5 };
  switch (payload.origin) {
    case 'typed':
      return <rect key={key} x={cx - 3.5} y={cy - 3.5} width={7} height={7} {...open} />;
    case 'forecast':
      return <circle key={key} cx={cx} cy={cy} r={2.5} fill="var(--ink)" />;
    default:
      return <circle key={key} cx={cx} cy={cy} r={2} {...open} />;
  }
}
