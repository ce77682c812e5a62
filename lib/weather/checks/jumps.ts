import { HOUR_MS, type Instant } from '@/lib/time/instant';
import type { ServiceAnswer } from '@/lib/weather/service-hour';
import { type Finding, whole } from './finding';
import { type JumpLimit, PRESSURE_SPIKE, PRESSURE_STEP, TEMPERATURE_SPIKE, TEMPERATURE_STEP } from './limits';

type Point = { readonly at: Instant; readonly value: number };
type Limits = { readonly spike: JumpLimit; readonly step: JumpLimit };

/** Does the temperature move as weather does? */
export function checkTemperatureJumps({ hours }: ServiceAnswer): Finding {
  const points = hours.flatMap(({ at, temperature }) =>
    temperature === null ? [] : [{ at, value: temperature }],
  );
  return jumps(points, { spike: TEMPERATURE_SPIKE, step: TEMPERATURE_STEP });
}

/** And the pressure? */
export function checkPressureJumps({ hours }: ServiceAnswer): Finding {
  const kind = hours.some((hour) => hour.stationPressure !== null) ? 'stationPressure' : 'seaLevelPressure';
  const points = hours.flatMap((hour) => {
    const value = hour[kind];
    return value === null ? [] : [{ at: hour.at, value }];
  });
  return jumps(points, { spike: PRESSURE_SPIKE, step: PRESSURE_STEP });
}

/**
 * An hour apart from both its neighbours, or an end apart from its only one, is left out; a jump that stays between the
 * others is two answers in one, and neither is believed.
 */
function jumps(points: readonly Point[], limits: Limits): Finding {
  const spikes = new Set(points.filter((_, i) => isSpike(points, i, limits.spike)));
  const calm = points.filter((point) => !spikes.has(point));
  const ends = [calm[0], calm.at(-1)].filter((end) => end !== undefined);
  const second = [calm[1], calm.at(-2)];
  ends.forEach((end, i) => {
    const beside = second[i];
    if (beside !== undefined && isJump(end, beside, limits.step)) spikes.add(end);
  });
  const rest = calm.filter((point) => !spikes.has(point));
  const stays = rest.some((point, i) => {
    const before = rest[i - 1];
    return before !== undefined && isJump(before, point, limits.step);
  });
  if (stays) return whole({ code: 'jump' });
  return { kind: 'hours', at: [...spikes].map(({ at }) => at) };
}

function isSpike(points: readonly Point[], i: number, limit: JumpLimit): boolean {
  const [before, point, after] = [points[i - 1], points[i], points[i + 1]];
  if (before === undefined || point === undefined || after === undefined) return false;
  const thereAndBack = (point.value - before.value) * (point.value - after.value) > 0;
  return thereAndBack && isJump(before, point, limit) && isJump(point, after, limit);
}

function isJump(a: Point, b: Point, { first, perHour, most }: JumpLimit): boolean {
  const hours = Math.abs(b.at - a.at) / HOUR_MS;
  return Math.abs(b.value - a.value) > Math.min(first + perHour * Math.max(0, hours - 1), most);
}
