import { describe, expect, it } from 'vitest';
import { droppedCellSentence, pasteProblemSentence, skippedLineSentence } from '@/lib/words/paste';

describe('what was left out of a paste', () => {
  it('is named by its line, its text and the reason', () => {
    expect(skippedLineSentence({ line: 3, text: '20:00\tn/a', reason: 'no-temperature' })).toBe(
      'Line 3 (“20:00 n/a”) has no temperature.',
    );
    expect(droppedCellSentence({ line: 2, text: '180', reason: 'humidity-out-of-range' })).toBe(
      'Line 2: the humidity is not between 0 and 100 % (“180”); the rest of the line counts.',
    );
  });

  it('is cut where somebody pasted a novel', () => {
    const sentence = skippedLineSentence({ line: 1, text: 'x'.repeat(5000), reason: 'time-not-readable' });
    expect(sentence.length).toBeLessThan(100);
  });

  it('says what to do where there are no hours at all', () => {
    expect(pasteProblemSentence({ code: 'times-run-backwards' })).toContain('earliest hour first');
    expect(pasteProblemSentence({ code: 'unit-conflict', column: 1, header: 'F', cell: '-4 C' })).toBe(
      'The heading says F, but a cell says -4 C. Make them the same and paste again.',
    );
    expect(pasteProblemSentence({ code: 'too-many-lines', limit: 1000 })).toContain('1000 lines');
  });
});
