import { scaleLinear as peer, scalePoint as pointPeer } from 'd3-scale';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { scaleLinear, scalePoint } from '@/.scripts/chart-scales.mjs';

const end = fc.integer({ min: -1e6, max: 1e6 }).map((n) => n / 7);
const ends = fc.tuple(end, end);

// d3-scale 4 is what recharts was written against.
it('is the line d3 draws, there and back', () => {
  fc.assert(
    fc.property(ends, ends, end, (domain, range, value) => {
      const [ours, theirs] = [scaleLinear(), peer()].map((scale) => scale.domain(domain).range(range));
      const tall = Math.max(1, ...[...domain, ...range, value].map(Math.abs), Math.abs(theirs?.(value) ?? 0));
      expect(Math.abs((ours?.(value) ?? Number.NaN) - (theirs?.(value) ?? 0)) / tall).toBeLessThan(1e-9);
      expect(ours?.domain()).toEqual(theirs?.domain());
      expect(ours?.copy().range()).toEqual(theirs?.range());
      fc.pre(Math.abs(range[1] - range[0]) > 1);
      const back = theirs?.invert(value) ?? 0;
      const far = Math.max(1, Math.abs(back), ...domain.map(Math.abs));
      expect(Math.abs((ours?.invert(value) ?? Number.NaN) - back) / far).toBeLessThan(1e-6);
    }),
  );
});

it('is half way where all is one number, and nowhere for what is none', () => {
  expect(scaleLinear().domain([5, 5]).range([0, 10])(7)).toBe(peer().domain([5, 5]).range([0, 10])(7));
  expect(scaleLinear()(Number.NaN)).toBe(peer()(Number.NaN));
});

it('puts places one after the other where d3 puts them', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 0, max: 9 }), { maxLength: 8 }), ends, (domain, range) => {
      const ours = scalePoint().domain(domain).range(range);
      const theirs = pointPeer<number>().domain(domain).range(range);
      expect(ours.domain()).toEqual(theirs.domain());
      expect(ours.bandwidth()).toBe(theirs.bandwidth());
      for (let value = 0; value <= 9; value += 1) {
        const place = theirs(value);
        if (place === undefined) expect(ours.copy()(value)).toBeUndefined();
        else expect(ours.copy()(value)).toBeCloseTo(place, 6);
      }
    }),
  );
});
