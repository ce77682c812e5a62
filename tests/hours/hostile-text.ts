import { seededRandom } from '@/tests/support/seeded-random';

const CELLS = [
  '18:00',
  '6 PM',
  '24:00',
  '12:30 a.m.',
  '2027-01-16',
  '1/2/2027',
  '16.1.27',
  '2027-01-16T18:00Z',
  '-12,5',
  '−12.5 °C',
  '14F',
  '1e309',
  'NaN',
  '-',
  '',
  '80 %',
  '0,8',
  '29.92 inHg',
  '1.013,25',
  'Time',
  'Temp (°F)',
  'RH',
  'QNH',
  '"',
  '""',
  "'",
  '__proto__',
  'constructor',
  '\u2212',
  '°',
  '\u0000',
  '\ud800',
  '=1+1',
  'x'.repeat(300),
];

/** Random tables of cells as people, spreadsheets and attackers make them. */
export function hostileTexts(count: number, seed: number): readonly string[] {
  const { uniform } = seededRandom(seed);
  const pick = <T>(from: readonly T[]): T => from[Math.floor(uniform() * from.length)] as T;
  return Array.from({ length: count }, () => {
    const mark = pick(['\t', ';', ',', ' ', '\n']);
    const line = (): string =>
      Array.from({ length: Math.floor(uniform() * 6) }, () => pick(CELLS)).join(mark);
    const text = Array.from({ length: Math.floor(uniform() * 30) }, line).join(pick(['\n', '\r\n', '\r']));
    if (uniform() < 0.8) return text;
    const at = Math.floor(uniform() * text.length);
    return text.slice(0, at) + String.fromCharCode(Math.floor(uniform() * 0x1_0000)) + text.slice(at + 1);
  });
}

/** Long texts that make careless patterns search for ages. */
export const LONG_TEXTS: readonly string[] = [
  `1${' '.repeat(99_000)}x`,
  `18:00${'\t'.repeat(99_000)}-9`,
  '('.repeat(99_000),
  `${'1'.repeat(98_000)},${'1'.repeat(500)}:`,
  ','.repeat(99_000),
  '1,'.repeat(49_000),
  '"'.repeat(99_000),
  'a '.repeat(49_000),
  '1 '.repeat(49_000),
  '\n'.repeat(99_000),
  `${'\t'.repeat(190)}\n`.repeat(500),
];
