import { expect, it } from 'vitest';
import type { Stair } from '@/lib/plan/night-picture';
import { stairNames } from '@/lib/words/stair-name';
import { at, ZONE } from './plan-of';

const clock = (time: string) => at(`2027-01-16T${time}:00-06:00`);
const stair = (size: number, from: string, to: string, trim: number | null = null): Stair => ({
  size,
  worth: size,
  leanEdge: size + 8,
  richEdge: size - 20,
  from: clock(from),
  to: clock(to),
  trim,
});

it('names what is in, and says "Put in" only of what is still to be put in', () => {
  const stairs = [
    stair(410, '18:00', '19:45'),
    stair(450, '19:45', '20:07'),
    stair(422.5, '20:07', '23:30', 2),
  ];
  const picture = { stairs, swaps: [{ from: clock('20:00'), to: clock('20:15') }] };
  const named = (now: string) =>
    stairs.map((_, place) => stairNames(picture, place, { zone: ZONE, now: clock(now) }));
  expect(named('19:50')).toEqual([['410'], ['450'], ['Put in 422.5 trim 2, 20:00', 'Put in 422.5 trim 2']]);
  // Once it is due, by when: as the figure and the words beside it say it.
  expect(named('20:05')[2]).toEqual(['Put in 422.5 trim 2 by 20:15', 'Put in 422.5 trim 2']);
});

it('says "Put in" of the last step within the bounds of a swap: jets that went in just before it are in already', () => {
  const stairs = [stair(420, '18:00', '20:00'), stair(390, '20:00', '20:07'), stair(420, '20:07', '23:30')];
  const picture = { stairs, swaps: [{ from: clock('20:00'), to: clock('20:15') }] };
  const names = stairs.map((_, place) => stairNames(picture, place, { zone: ZONE, now: clock('20:05') })[0]);
  expect(names).toEqual(['420', '390', 'Put in 420 by 20:15']);
});
