import { describe, expect, test } from 'vitest';
import { MOST_FILE_CHARACTERS, nightFile, readNightFile } from '@/lib/share/night-file';
import { linkProblemSentence } from '@/lib/words/link-problems';
import { acceptedEvening } from '@/tests/support/shared-evening';

const codeOf = (text: string): string => {
  const read = readNightFile(text);
  return read.ok ? 'read' : read.reason.code;
};

describe('A night in a file', () => {
  test('comes back as it was saved', () => {
    expect(readNightFile(nightFile(acceptedEvening()))).toEqual({ ok: true, value: acceptedEvening() });
  });

  test('is refused for what it is, and each reason says what to do next', () => {
    const file = JSON.parse(nightFile(acceptedEvening()));
    const cases = {
      empty: ' \n',
      damaged: nightFile(acceptedEvening()).slice(0, -20),
      'not-a-night': JSON.stringify({ ...file, night: { ...file.night, sharedAt: 'yesterday' } }),
      'newer-version': JSON.stringify({ ...file, version: 2 }),
      'too-long': 'x'.repeat(MOST_FILE_CHARACTERS + 1),
    };
    for (const [code, text] of Object.entries(cases)) {
      expect(codeOf(text)).toBe(code);
      const read = readNightFile(text);
      expect(read.ok ? '' : linkProblemSentence(read.reason)).toMatch(/Ask|Reload/);
    }
    expect(codeOf('{"machines":[]}')).toBe('not-a-night');
    expect(codeOf('[]')).toBe('not-a-night');
  });

  test('names the field that is wrong', () => {
    const file = JSON.parse(nightFile(acceptedEvening()));
    file.night.machines[0].machine.box[1].size = -3;
    const read = readNightFile(JSON.stringify(file));
    expect(!read.ok && linkProblemSentence(read.reason)).toContain(
      'machines[0].machine.box[1].size: a jet size is at least 0.1',
    );
  });
});
