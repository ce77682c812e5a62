import type { Information } from '@/lib/carb/information';
import type { Interval, Learned, LearnedEntry } from '@/lib/carb/learn';
import type { BaselineShift, ResponseOrigin } from '@/lib/carb/machine';
import type { Uncounted } from '@/lib/store/evidence';
import { formatNumber, formatSignedNumber } from '@/lib/units/format';
import { counted, listing } from './listing';

export type ExponentName = 'pressure' | 'temperature';

const ORIGINS: Readonly<Record<ResponseOrigin, string>> = {
  prior: 'what is assumed',
  chart: 'your chart',
  log: 'your log',
  'chart-and-log': 'your chart and your log',
  typed: 'numbers typed by you',
};

export function originText(origin: ResponseOrigin): string {
  return ORIGINS[origin];
}

/** What stands in until evidence speaks, and where it is from: the prior that the response starts with. */
export function assumedSentence({ pressureExponent, temperatureExponent }: Learned['prior']): string {
  const [pressure, temperature] = [pressureExponent, temperatureExponent].map((mean) =>
    formatNumber(mean, 2),
  );
  const what =
    pressure === temperature
      ? `${pressure} is assumed for both`
      : `${pressure} and ${temperature} are assumed`;
  return `Until they do, ${what}: a judgement between the two, no source.`;
}

/** "0.72 (0.61 to 0.83)". */
export function exponentText(mean: number, { low, high }: Interval): string {
  return `${formatNumber(mean, 2)} (${formatNumber(low, 2)} to ${formatNumber(high, 2)})`;
}

const EXPONENTS: Readonly<Record<ExponentName, string>> = {
  pressure: 'The pressure exponent',
  temperature: 'The temperature exponent',
};

/** Whether the evidence spoke on an exponent, and what is missing where it did not. */
export function informationSentence(
  name: ExponentName,
  { state, why, borrowed, sdLeft }: Information,
): string {
  const which = EXPONENTS[name];
  if (state === 'learned')
    return `${which} is learned: its uncertainty is down to ${formatNumber(sdLeft * 100)} % of what it was.`;
  const lent = borrowed
    ? ' It moved only because the two usually go together, not because anything was seen of it.'
    : '';
  return `${which} stays near what is assumed: ${missingText(name, why)}${lent}`;
}

function missingText(name: ExponentName, why: Information['why']): string {
  switch (why) {
    case 'one-kind-of-weather':
      return name === 'pressure'
        ? 'your entries are all near one pressure. Runs at a higher or lower track would tell.'
        : 'your entries are all near one temperature. Runs on warmer or colder days would tell.';
    case 'moves-together':
      return 'pressure and temperature always changed together in your entries, so they cannot be told apart.';
    default:
      return 'there is nothing yet to learn it from.';
  }
}

/** What the log says of the baseline itself; null where it says nothing worth a word. */
export function levelSentence(shift: BaselineShift, logStep: number): string {
  const sizes = shift.log / logStep;
  const doubt = `give or take ${formatNumber((1.645 * shift.sd) / logStep, 1)}`;
  if (Math.abs(sizes) < 0.1) return `By the log the baseline itself is right (${doubt} sizes).`;
  const side = sizes > 0 ? 'lean' : 'rich';
  return `By the log the baseline itself is ${formatNumber(Math.abs(sizes), 1)} sizes ${side} (${doubt}).`;
}

/** How an entry moved the exponents: "pressure +0.03, temperature −0.01"; empty where it hardly did. */
export function influenceText({ influence }: Pick<LearnedEntry, 'influence'>): string {
  const parts = (['pressure', 'temperature'] as const)
    .filter((name) => Math.abs(influence[name]) >= 0.005)
    .map((name) => `${name} ${formatSignedNumber(influence[name], 2)}`);
  return parts.join(', ');
}

/** What stands apart from all others, and what to do about it. */
export function outlierSentence(names: readonly string[]): string {
  const verb = names.length === 1 ? 'stands' : 'stand';
  return `${listing(names)} ${verb} far apart from all others and counted less. Check jets, air and verdict: a slip there is more likely than a new law.`;
}

/**
 * From five degrees of freedom on a scatter over 1.5 is more than chance: it comes by chance once in twenty times. From
 * memory: the upper 5 % point of chi-squared with 5 degrees of freedom is 11.07, and the root of 11.07 / 5 is 1.49.
 */
const LEAST_DEGREES = 5;

/** How far entries stand off one another; '' until there are enough of them to say so. Every group has a level to fit. */
export function scatterSentence({ scatter, entries }: Pick<Learned, 'scatter' | 'entries'>): string {
  const groups = new Set(entries.map(({ group }) => group)).size;
  if (scatter === null || entries.length - groups < LEAST_DEGREES) return '';
  if (scatter > 1.5)
    return `The entries scatter ${formatNumber(scatter, 1)} times as much as such verdicts should. Something else changed between them, or some are misread.`;
  return 'The entries scatter about as such verdicts should.';
}

const LEFT_OUT: Readonly<Record<Uncounted, string>> = {
  'no-verdict': 'without a verdict',
  'jets-do-not-fit': 'with jets that do not fit the machine as it is now',
  'air-unclear': 'whose air is not clear',
  'older-hardware': 'of before the last but one change of parts',
};

/** "Not counted: 3 runs without a verdict."; empty where all counted. */
export function leftOutSentence(leftOut: readonly { readonly why: Uncounted }[]): string {
  const parts = (Object.keys(LEFT_OUT) as Uncounted[]).flatMap((why) => {
    const count = leftOut.filter((entry) => entry.why === why).length;
    return count === 0 ? [] : [`${counted(count, 'run')} ${LEFT_OUT[why]}`];
  });
  return parts.length === 0 ? '' : `Not counted: ${listing(parts)}.`;
}
