import { describe, expect, it } from 'vitest';
import { urgencyOf } from '@/lib/club/due';
import { addMinutes } from '@/lib/time/instant';
import { wallBands } from '@/lib/words/wall';
import { boxOf, clubNight, racerOf } from '@/tests/club/club-cases';
import { makeBriefing } from '@/tests/support/make-briefing';
import { clock, DUSK, machineOf } from '@/tests/support/plan-cases';

const VOICE = { names: { racer: (id: string) => `Racer ${id}` }, zone: 'UTC', now: DUSK } as const;

describe('the wall', () => {
  const briefing = makeBriefing(
    Array.from({ length: 40 }, (_, i) => racerOf({ id: String(i) })),
    clubNight(),
  );
  const bands = wallBands(briefing, VOICE);

  it('names every racer whose job is due at the first moment', () => {
    const [first] = bands;
    const moment = briefing.acts[0]!.at;
    const due = briefing.acts.filter(({ at }) => at === moment);
    expect(first?.tiles.map(({ name }) => name)).toEqual(due.map(({ racerId }) => `Racer ${racerId}`));
    expect(first?.band.must).toBe(true);
    expect(first?.count).toBe(`${due.length} jobs`);
    expect(first?.before).toBe('Put\u00a0in');
  });

  it('shows what is in everywhere, but not when the next job is near', () => {
    expect(bands.at(-1)).toMatchObject({ kind: 'in-now', head: 'In now' });
    expect(bands.at(-1)?.tiles).toHaveLength(40);
    const moment = briefing.acts[0]!.at;
    for (const minutes of [15, 5]) {
      const now = addMinutes(moment, -minutes);
      const near = wallBands(briefing, { ...VOICE, now });
      expect(near.some(({ kind }) => kind === 'in-now')).toBe(false);
      expect(near[0]?.urgency).toBe(urgencyOf(moment, now));
    }
  });

  it('puts those who must not race first', () => {
    const poor = racerOf({ id: 'poor', machine: machineOf({ box: boxOf([400, 410]) }) });
    const [first] = wallBands(makeBriefing([racerOf({ id: 'a' }), poor], clubNight()), VOICE);
    expect(first).toMatchObject({ kind: 'alarms', head: 'Stop' });
    expect(first?.tiles).toMatchObject([{ name: 'Racer poor', kind: 'alarm', word: 'do not race' }]);
    const [tile] = first?.tiles ?? [];
    expect(tile?.kind === 'alarm' ? tile.text : '').toMatch(/: lean .*\d in 64\. Borrow 4[2-9]0\.$/);
  });

  it('names each jet where they differ or did, and one where all are alike', () => {
    const jetsFrom = (mains: readonly number[]) => {
      const machine = machineOf({
        carburettors: mains.map((main) => ({ main })),
        box: boxOf([380, 390, 400, 410, 420, 430, 440], 3),
      });
      const { acts, planned } = makeBriefing([racerOf({ id: 'a', machine })], clubNight({ now: clock(17) }));
      const [jobs] = wallBands({ planned, acts, unplanned: [], boxes: [], borrowings: [] }, VOICE);
      const [tile] = jobs?.tiles ?? [];
      return { tile, swap: acts[0]!.swap };
    };
    const staggered = jetsFrom([410, 400, 410]);
    expect(staggered.tile).toMatchObject({
      jets: staggered.swap.to.mains.map((main, i) => ({
        size: String(main),
        changed: main !== staggered.swap.from.mains[i],
      })),
    });
    const alike = jetsFrom([410, 410]);
    expect(alike.tile).toMatchObject({ jets: [{ size: String(alike.swap.to.mains[0]), changed: true }] });
  });
});
