import { describe, expect, test } from 'vitest';
import { CAUTIONS, cautionsFor, SWAP_CAUTION_LINE } from '@/lib/words/cautions';
import { filesWith } from '@/tests/support/files-with';

describe('The cautions', () => {
  test.each([
    ['swap', /engine off/i],
    ['swap', /fuel tap shut/i],
    ['swap', /float bowl in a can/i],
    ['swap', /no flame, no spark/i],
    ['swap', /gloves on.*fuel/i],
    ['first-run', /guess until the plugs agree.*piston wash/i],
    ['indoors', /free air only.*carbon monoxide/i],
    ['ice', /ice/i],
    ['model', /manual.*sanctioning body.*local rules/i],
  ] as const)('at the place %s mention %s', (place, words) => {
    expect(cautionsFor(place).some((caution) => words.test(caution))).toBe(true);
  });

  test('are all placed beside an act', () => {
    const places = [...new Set(CAUTIONS.map(({ place }) => place))];
    expect(places.flatMap((place) => cautionsFor(place))).toHaveLength(CAUTIONS.length);
  });

  test('of a swap fit into one line, for paper, a calendar and a wall', () => {
    for (const words of [
      /engine off/i,
      /tap shut/,
      /bowl fuel caught/,
      /no flame or spark/,
      /gloves/,
      /plugs/,
    ])
      expect(SWAP_CAUTION_LINE).toMatch(words);
  });
});

describe('A caution stands where its act is done', () => {
  test('beside the choice of what was fitted, and once on the page of the night, of rides, of the club and of a board', () => {
    expect(filesWith(/cautionsFor\('swap'\)|<Cautions \/>|<TrailCautions \/>/)).toEqual([
      'components/board/machine-view.tsx',
      'components/club/club-desk.tsx',
      'components/night/cautions.tsx',
      'components/night/plate/fit-dialog.tsx',
      'components/night/whole-night.tsx',
      'components/trail/trail-room.tsx',
    ]);
  });

  test('in one line with the acts that are listed, done at the track, printed, put into a calendar or hung on a wall', () => {
    expect(filesWith(/[{,[( ]SWAP_CAUTION_LINE[\]},)]/)).toEqual([
      'components/club/act-list.tsx',
      'components/club/print/briefing-print.tsx',
      'components/club/print/racer-sheet.tsx',
      'components/club/wall/wall-view.tsx',
      'components/machine/home-machine.tsx',
      'components/night/plate/track-view.tsx',
      'components/trail/card-notes.tsx',
      'lib/share/accepted-acts.ts',
      'lib/share/calendar-acts.ts',
    ]);
  });

  test('of engines that run indoors where a trailer or a shed is near', () => {
    expect(filesWith(/cautionsFor\('indoors'\)|'indoors', 'ice'/)).toEqual([
      'components/club/print/briefing-print.tsx',
      'components/club/wall/wall-view.tsx',
      'components/night/cautions.tsx',
      'components/trail/trail-cautions.tsx',
    ]);
  });
});
