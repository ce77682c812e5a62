import { describe, expect, it } from 'vitest';
import { boardAddress, followHash, keepHash, readDoorway } from '@/lib/share/board-address';

const BOARD = { id: 'b-oard_1', keepSecret: 'K'.repeat(22), followSecret: 'F'.repeat(22) };

describe('the address of a board', () => {
  it('keeps its secrets behind the #', () => {
    for (const hash of [followHash(BOARD), followHash(BOARD, 'ada'), keepHash(BOARD)]) {
      const { pathname, search } = new URL(boardAddress('https://example.org', hash));
      // What a browser sends (RFC 9110, section 7.1) ends before the fragment.
      expect(`${pathname}${search}`).toBe('/board');
    }
  });

  it('opens what it was made for', () => {
    const { id, keepSecret, followSecret } = BOARD;
    const follower = { id, secret: followSecret, followSecret, keeps: false };
    expect(readDoorway(followHash(BOARD))).toEqual({ ...follower, machine: null });
    expect(readDoorway(followHash(BOARD, 'ada'))).toEqual({ ...follower, machine: 'ada' });
    expect(readDoorway(keepHash(BOARD))).toEqual({
      id,
      secret: keepSecret,
      followSecret,
      keeps: true,
      machine: null,
    });
    expect(followHash(readDoorway(keepHash(BOARD))!)).toBe(followHash(BOARD));
  });

  it.each(['', 'b', 'b.', '.s', 'keep.b.s', 'b.s/..', 'b.s.%2e', `b.${'s'.repeat(65)}`])(
    'opens nothing with %j',
    (hash) => expect(readDoorway(hash)).toBeNull(),
  );
});
