import { describe, expect, test } from 'vitest';
import { dangerAtTrack } from '@/lib/words/danger';
import { on, planOf, runOn, standOn } from './plan-of';

describe('What is left to do at the track', () => {
  const sitOut = (...leanRuns: readonly number[]) => {
    const settings = Array.from({ length: 5 }, () => on(410));
    const runs = settings.map((setting, run) =>
      runOn(run, setting, leanRuns.includes(run) ? { grade: 'lean' } : {}),
    );
    const warnings = leanRuns.map((run) => ({ code: 'no-jet-rich-enough', run, sizes: [430] }) as const);
    const { dangers, plan } = standOn(planOf(settings, { runs, warnings }));
    return dangerAtTrack(dangers, plan);
  };

  test('names the runs that it is about, since it stands far below them', () => {
    expect(sitOut(3)).toBe('Sit Round 4 out.');
    expect(sitOut(2, 3, 4)).toBe('Sit Rounds 3 to 5 out.');
  });
});
