import { describe, expect, it } from 'vitest';
import { fanPath, idealPath } from '@/components/night/picture/ideal-curve';
import { type Picture, pictureOf } from '@/components/night/picture/picture';
import { plotOf } from '@/components/night/picture/plot';
import { nightCase } from './night-case';

const WIDTH = 344;
/** The drawing goes in straight lines of 2 pixels, rounded to a tenth. */
const DRAWN = 0.5;

const { night, plan } = nightCase();

function drawnNight(span: 'runs' | 'hours'): Picture {
  const request = { plan, machine: night.machine, carburettor: 0, zone: night.zone, place: null, span };
  const picture = pictureOf(request);
  if (picture === null) throw new Error('no picture');
  return picture;
}

const pointsOf = (path: string): readonly (readonly [number, number])[] =>
  path
    .replace(/[MZ]/g, '')
    .split('L')
    .map((point) => point.split(' ').map(Number) as [number, number]);

/** Height of a drawn line at x, between the two points around it. */
function heightAt(path: string, x: number): number {
  const points = pointsOf(path);
  const next = Math.max(
    1,
    points.findIndex(([at]) => at >= x),
  );
  const [a, b] = [points[next - 1] ?? [0, 0], points[next] ?? [0, 0]];
  return a[1] + ((x - a[0]) / (b[0] - a[0])) * (b[1] - a[1]);
}

describe.each(['runs', 'hours'] as const)('the drawn night, over %s', (span) => {
  const picture = drawnNight(span);
  const plot = plotOf(picture, WIDTH);

  it('leads the curve through the ideal of every hour', () => {
    const path = idealPath(picture, plot);
    for (const { at, ideal } of picture.hours.filter(
      (hour) => hour.at >= picture.from && hour.at <= picture.to,
    ))
      expect(Math.abs(heightAt(path, plot.x(at)) - plot.y(ideal[0] ?? Number.NaN))).toBeLessThan(DRAWN);
  });

  it('stays inside the plot from edge to edge, the fan around the curve', () => {
    const curve = pointsOf(idealPath(picture, plot));
    expect(curve[0]?.[0]).toBeCloseTo(plot.left, 0);
    expect(curve.at(-1)?.[0]).toBeCloseTo(plot.right, 0);
    const fan = pointsOf(fanPath(picture, plot));
    const [upper, lower] = [fan.slice(0, fan.length / 2), fan.slice(fan.length / 2).toReversed()];
    curve.forEach(([x, y], i) => {
      expect([upper[i]?.[0], lower[i]?.[0]]).toEqual([x, x]);
      // Pixels count downwards: the larger size stands higher.
      expect(upper[i]?.[1]).toBeLessThan(y);
      expect(lower[i]?.[1]).toBeGreaterThan(y);
    });
    for (const [, y] of fan) {
      expect(y).toBeGreaterThan(plot.top);
      expect(y).toBeLessThan(plot.bottom);
    }
  });
});

it('a time or a size beyond the picture stands at the edge of the plot', () => {
  const picture = drawnNight('runs');
  const plot = plotOf(picture, WIDTH);
  expect([plot.x(picture.from - 1e7), plot.x(picture.to + 1e7)]).toEqual([plot.left, plot.right]);
  expect([plot.y(picture.most + 100), plot.y(picture.least - 100)]).toEqual([plot.top, plot.bottom]);
});
