// `npm run face`: the text face as the pages send it, cut from the whole one down to what is written here. Run by hand when
// a letter is missing; what it makes is in the repository.
import { copyFileSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import subsetFont from 'subset-font';
import { ROOT } from './sources.mjs';

const FROM = join(ROOT, 'node_modules', '@fontsource', 'barlow-semi-condensed');
const TO = join(ROOT, 'app', 'face');
/** All files together, in bytes: a first visit has to stay light. */
const MOST_BYTES = 30_000;
/** One weight for all: what is more is larger, what is less is paler. Two would be a request and 8 kB more. */
const WEIGHT = 600;

const between = (from, to) =>
  Array.from({ length: to - from + 1 }, (_, i) => String.fromCodePoint(from + i)).join('');
/** What goes into which file, and which of the whole face's files it is cut from. */
const CUTS = [
  {
    // Basic Latin and the signs that stand beside numbers: all that a first visit needs.
    name: '',
    from: 'latin',
    text: `${between(0x20, 0x22)}%'()+,-./${between(0x30, 0x3f)}${between(0x41, 0x5a)}${between(0x61, 0x7a)}\u00a0°·±³×½¼¾–‘’“”…−`,
  },
  // In names: Latin-1, then Latin Extended-A with the commas below of Romanian. The style sheet says when each is asked for.
  {
    name: '-accents',
    from: 'latin',
    text: `${between(0xc0, 0xd6)}${between(0xd8, 0xf6)}${between(0xf8, 0xff)}`,
  },
  { name: '-far-accents', from: 'latin-ext', text: `${between(0x100, 0x17f)}${between(0x218, 0x21b)}` },
];

mkdirSync(TO, { recursive: true });
const made = await Promise.all(
  CUTS.map(async ({ name, from, text }) => {
    const whole = readFileSync(join(FROM, 'files', `barlow-semi-condensed-${from}-${WEIGHT}-normal.woff2`));
    const face = await subsetFont(whole, text, {
      targetFormat: 'woff2',
      keepFeatures: ['tnum'],
      noHinting: true,
    });
    writeFileSync(join(TO, `barlow-semi-condensed-${WEIGHT}${name}.woff2`), face);
    console.log(`${WEIGHT}${name}: ${face.length} bytes`);
    return face.length;
  }),
);
copyFileSync(join(FROM, 'LICENSE'), join(TO, 'LICENSE'));
const bytes = made.reduce((sum, each) => sum + each, 0);
console.log(`${bytes} bytes in all.`);
if (bytes > MOST_BYTES) throw new Error(`More than ${MOST_BYTES} bytes.`);
