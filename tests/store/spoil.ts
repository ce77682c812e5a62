import { sealBackup } from '@/lib/store/backup-file';
import { seededRandom } from '@/tests/support/seeded-random';

/** What people, programs and attackers put into files. */
const POISON: readonly unknown[] = [
  null,
  true,
  0,
  -0,
  -1,
  1e308,
  0.1,
  '',
  'x'.repeat(3000),
  '\u0000',
  '\ud800',
  '__proto__',
  'constructor',
  [],
  [[[]]],
  {},
  { __proto__: null, polluted: true },
  JSON.parse('{"__proto__":{"polluted":true}}'),
  JSON.parse('{"constructor":{"prototype":{"polluted":true}}}'),
  '1e999',
  '2027-02-30T00:00:00Z',
];

const { uniform } = seededRandom(5_000);
const pick = <T>(from: readonly T[]): T => from[Math.floor(uniform() * from.length)] as T;

/** Every place in a JSON value that can be replaced. */
function placesIn(
  value: unknown,
  places: [Record<string, unknown>, string][] = [],
): [Record<string, unknown>, string][] {
  if (typeof value === 'object' && value !== null)
    for (const key of Object.keys(value)) {
      const holder = value as Record<string, unknown>;
      places.push([holder, key]);
      placesIn(holder[key], places);
    }
  return places;
}

type Change = (text: string) => string;

const reseal = (text: string): string =>
  sealBackup(text.replace(/"checksum": "[0-9a-f]{8}"\n\}\n$/, '"checksum": "00000000"\n}\n'));

const onText: readonly Change[] = [
  (text) => text.slice(0, Math.floor(uniform() * text.length)),
  (text) => text.slice(Math.floor(uniform() * text.length)),
  (text) => {
    const at = Math.floor(uniform() * text.length);
    return text.slice(0, at) + String.fromCharCode(Math.floor(uniform() * 0x1_0000)) + text.slice(at + 1);
  },
  (text) => {
    const at = Math.floor(uniform() * text.length);
    return (
      text.slice(0, at) +
      pick(['"__proto__":{"polluted":true},', '[', '{', '"', '\\u0000', ',', '1e400']) +
      text.slice(at)
    );
  },
  (text) => text + text,
  () => pick(['[', '{"a":']).repeat(Math.floor(uniform() * 50_000)),
  () => String.fromCharCode(...Array.from({ length: 200 }, () => Math.floor(uniform() * 0x1_0000))),
];

/** Changes the value and seals it, so that not the checksum but what comes after has to hold. */
const onValue: Change = (text) => {
  const file: Record<string, unknown> = JSON.parse(text);
  for (let changes = 1 + Math.floor(uniform() * 3); changes > 0; changes--) {
    const [holder, key] = pick(placesIn(file).filter(([, name]) => name !== 'checksum'));
    const how = uniform();
    if (how < 0.6) holder[key] = structuredClone(pick(POISON));
    else if (how < 0.8) delete holder[key];
    else
      Object.defineProperty(holder, pick(['__proto__', 'constructor', 'toString', 'extra']), {
        value: structuredClone(pick(POISON)),
        enumerable: true,
        configurable: true,
        writable: true,
      });
  }
  delete file.checksum;
  return sealBackup(`${JSON.stringify({ ...file, checksum: '00000000' }, null, 1)}\n`);
};

/** The same text spoiled in one of many ways; half of them with a checksum that fits again. */
export function spoiled(text: string): string {
  const how = uniform();
  if (how < 0.5) return onValue(text);
  const changed = pick(onText)(text);
  return how < 0.6 ? reseal(changed) : changed;
}
