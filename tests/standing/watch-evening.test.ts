import { describe, expect, it } from 'vitest';
import { METRIC_UNITS } from '@/lib/units/choice';
import { type Look, look, watchState } from '@/lib/words/watch-state';
import { WalkedEvening } from '@/tests/support/walked-evening';

/** What the watch sees of an evening, and what it says since it last looked. */
function watching(evening: WalkedEvening) {
  let before: Look | null = null;
  return (revision: number) => {
    const { night, standing } = evening.shown(0);
    const { plan, now } = standing;
    const state = watchState(night, plan, { zone: night.zone, units: METRIC_UNITS, now });
    const seen = look(before, { state, plan, revision, now, isAsked: standing.question !== null });
    before = seen.look;
    return { state, say: seen.say, inDanger: standing.dangers.length > 0, standing };
  };
}

const on = (...mains: readonly number[]) => ({ mains, trim: null });

describe('the watch over an evening of which nothing more is told', () => {
  // Minutes after 18:20: before the first run, between two, in the last minutes before the last.
  for (const minutes of [10, 160, 330])
    for (const told of [on(390, 380, 390), on(410, 400, 410), on(440, 430, 440)])
      it(`has no news of the plan that ${told.mains} at minute ${minutes} leads to, and calls nothing kept or needless in danger`, async () => {
        const evening = await WalkedEvening.start({ machine: {}, colder: 0 });
        const watch = watching(evening);
        // Richer jets than those of the baseline were in before: the accepted plan is of several jets already.
        await evening.press(0, (acts) => acts.fit(on(420, 410, 420)));
        evening.wait(minutes);
        await evening.press(0, (acts) => acts.fit(told));
        await evening.look(0);
        expect(watch(1)).toMatchObject({ state: { status: 'same', differences: [] }, say: null });
        for (let step = minutes; step < 370; step += 15) {
          evening.wait(15);
          const { say, inDanger, state } = watch(1);
          const texts = [say ?? '', ...('differences' in state ? state.differences : [])].join(' ');
          if (inDanger) expect(texts).not.toMatch(/holds again|no longer needed/);
        }
        evening.close();
      });

  it('says of no plan that it holds while it is asked whether its swap was made', async () => {
    const evening = await WalkedEvening.start({ machine: {}, colder: 0 });
    const watch = watching(evening);
    await evening.press(0, (acts) => acts.accept());
    await evening.look(0);
    let asked = 0;
    for (let step = 0; step < 74; step += 1) {
      const { say, standing } = watch(1);
      if (standing.question !== null) asked += 1;
      expect(say ?? '').not.toMatch(/holds again/);
      evening.wait(5);
    }
    expect(asked).toBeGreaterThan(40);
    evening.close();
  });

  it('says a swap that nobody made moved from when it was accepted, not from the gap before the next run', async () => {
    const evening = await WalkedEvening.start({ machine: {}, colder: 0 });
    const watch = watching(evening);
    await evening.press(0, (acts) => acts.accept());
    await evening.look(0);
    expect(watch(1).state).toMatchObject({
      accepted: expect.stringContaining('Put in 420 410 420 before Round 3 (20:00)'),
    });
    // 18:20 to 21:51: too late before the run at 22:00.
    evening.wait(211);
    expect(watch(1).state).toMatchObject({
      differences: ['The swap to 420 410 420 moved from 20:00 to 22:15, before Round 6.'],
    });
    evening.close();
  });

  it('says that a swap was not made in time, once', async () => {
    const evening = await WalkedEvening.start({ machine: {}, colder: 0 });
    const watch = watching(evening);
    evening.wait(330);
    await evening.press(0, (acts) => acts.fit(on(390, 380, 390)));
    await evening.look(0);
    const said = Array.from({ length: 30 }, () => {
      const { say } = watch(1);
      evening.wait(1);
      return say;
    }).filter((say) => say !== null);
    expect(said).toEqual([expect.stringMatching(/^Not made in time: the swap to 420 410 420 at 23:45\.$/)]);
    evening.close();
  });
});
