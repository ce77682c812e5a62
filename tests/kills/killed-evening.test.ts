import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { engines } from '@/tests/support/posted-engines';
import { POSTING_MINUTES } from './evening';
import { type KilledEvening, killedEvening } from './killed-evening';

/** More of both where they are asked for: `BOARDS=200 KILLS=50`. */
const BOARDS = Number(process.env.BOARDS ?? 15);
const KILLS = Number(process.env.KILLS ?? 4);
const SEED = 11;
/** Past the first turn of the weather; all of the evening where more is asked for. */
const MINUTES = process.env.BOARDS === undefined ? { minutes: 100 } : {};

const countOf = (all: readonly string[]): ReadonlyMap<string, number> => {
  const counts = new Map<string, number>();
  for (const one of all) counts.set(one, (counts.get(one) ?? 0) + 1);
  return counts;
};

describe('boards on servers that are killed at their work', () => {
  const folder = mkdtempSync(join(tmpdir(), 'heavy-air-kills-'));
  let calm: KilledEvening;
  beforeAll(async () => {
    // What is told where nobody is killed: one board for each minute in which any is posted.
    const place = { engine: 'file', folder: join(folder, 'calm') } as const;
    calm = await killedEvening({
      place,
      boards: POSTING_MINUTES,
      servers: 1,
      kills: 0,
      seed: SEED,
      ...MINUTES,
    });
  }, 1_800_000);
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it('are told the same where nobody is killed, each once', () => {
    expect(calm.faults).toEqual([]);
    expect(calm.told.every((keys) => keys.length >= 1)).toBe(true);
    expect(calm.taken).toHaveLength(calm.due.length);
    // What is due between two minutes is done at the next.
    expect(calm.longestOverdueMinutes).toBeLessThan(1);
  });

  describe.each(engines())('in $name', (engine) => {
    beforeAll(engine.start);
    afterAll(engine.stop);

    it('lose nothing, tell nothing twice but what was sent and not yet written down, and go on within two minutes', async () => {
      const { place } = await engine.fresh();
      const servers = engine.name === 'postgres' ? 2 : 1;
      const killed = await killedEvening({
        place,
        boards: BOARDS,
        servers,
        kills: KILLS,
        seed: SEED,
        ...MINUTES,
      });
      expect(killed.faults).toEqual([]);
      expect(killed.kills).toBe(KILLS);
      expect(killed.killedBetweenSendAndRecord).toBeGreaterThan(0);
      // The same is told as where nobody is killed.
      expect(killed.told).toEqual(
        killed.told.map((_, i) => calm.told[Math.floor((i * POSTING_MINUTES) / BOARDS)]),
      );
      const due = countOf(killed.due.map(({ phone, title }) => `${phone} ${title}`));
      const taken = countOf(killed.taken.map(({ phone, title }) => `${phone} ${title}`));
      expect([...taken.keys()].sort()).toEqual([...due.keys()].sort());
      const repeats = [...taken].filter(([key, count]) => count > (due.get(key) ?? 0));
      for (const [key, count] of repeats) expect([key, count - (due.get(key) ?? 0)]).toEqual([key, 1]);
      expect(repeats.length).toBeLessThanOrEqual(8 * killed.kills);
      const topics = new Map<string, Set<string>>();
      for (const { phone, topic } of killed.taken)
        topics.set(phone, (topics.get(phone) ?? new Set()).add(topic));
      expect([...topics.values()].every(({ size }) => size === 1)).toBe(true);
      // A lease is two minutes, and what is due between two minutes is done at the next.
      expect(killed.longestOverdueMinutes).toBeLessThan(3);
      if (process.env.BOARDS !== undefined)
        console.info(
          `${engine.name}: ${BOARDS} boards on ${servers} servers, ${killed.kills} kills, ${killed.killedBetweenSendAndRecord} of them as a message was sent; ${killed.due.length} messages to phones, ${repeats.length} told twice, none missing, longest wait ${killed.longestOverdueMinutes} min`,
        );
    }, 1_800_000);
  });
});
