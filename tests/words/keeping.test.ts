import { describe, expect, it } from 'vitest';
import { homeScreenSentence, keepingSentence } from '@/lib/words/keeping';

describe('what is said of keeping', () => {
  it.each([
    [{ keeps: 'disk', promised: true } as const, /has promised/, false],
    [{ keeps: 'disk', promised: false } as const, /has not promised.*seven days/, true],
    // Not known is no promise.
    [{ keeps: 'disk', promised: null } as const, /has not promised.*seven days/, true],
    [{ keeps: 'memory', promised: true } as const, /gone after a reload/, false],
  ])('%o offers the backup, and the home screen where that helps', (health, words, homeScreen) => {
    expect(keepingSentence(health)).toMatch(words);
    expect(keepingSentence(health)).toContain('backup file');
    expect(homeScreenSentence(health) !== null).toBe(homeScreen);
  });
});
