import { GROUPS, tallyOf } from '@/tests/support/lean-runs';
import { WORLDS } from '@/tests/support/other-worlds';
import { REAL_NIGHTS } from './real-nights';
import { type Season, seasonOf } from './season';

/** `npm run hindcast`: what ways of jetting are worth over a season, and whether stated risks came true. */

const NIGHTS = Number(process.argv[2] ?? 300);

const percent = (share: number, digits = 2) => `${(100 * share).toFixed(digits)} %`;

function printTable(rows: readonly (readonly string[])[]): void {
  const widths = rows[0]!.map((_, column) => Math.max(...rows.map((row) => row[column]!.length)));
  for (const row of rows)
    console.log(
      row
        .map((cell, i) => cell.padEnd(widths[i]!))
        .join('  ')
        .trimEnd(),
    );
}

function waysTable({ scores }: Season): readonly (readonly string[])[] {
  return [
    ['way', 'lean runs', 'lean minutes', 'swaps a night', 'rich loss'],
    ...Object.entries(scores).map(([name, { leanRuns, leanMinutes, swapsPerNight, richLoss }]) => {
      return [name, percent(leanRuns), percent(leanMinutes), swapsPerNight.toFixed(2), percent(richLoss)];
    }),
  ];
}

function calibrationRow(world: string, { outcomes }: Season): readonly string[] {
  const cells = Object.values(GROUPS).map((counts) => {
    const { runs, said, were } = tallyOf(outcomes, counts);
    return runs === 0 ? '-' : `${percent(said)}, ${percent(were)} (${runs})`;
  });
  return [world, ...cells];
}

console.log(
  `Real: the hours of ${REAL_NIGHTS.length} winter nights (tests/fixtures/hindcast/README.md), drawn again and`,
);
console.log(
  `again to ${NIGHTS} nights. Drawn: every forecast's error, every engine, its response, and each reading's own error.`,
);
const seasons = Object.entries(WORLDS).map(([name, world]) => {
  const season = seasonOf(world, NIGHTS);
  console.log(`\nThe truth: ${name}`);
  printTable(waysTable(season));
  return { name, season };
});
console.log('\n"At most 5 %": said, were (runs)');
printTable([
  ['the truth', ...Object.keys(GROUPS)],
  ...seasons.map(({ name, season }) => calibrationRow(name, season)),
]);
