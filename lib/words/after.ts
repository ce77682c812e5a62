import type { ForecastReview, NightReview, RunReview, Tally } from '@/lib/after/review';
import type { Instant } from '@/lib/time/instant';
import { formatPercent, formatTemperatureStep } from '@/lib/units/format';
import { kelvinDifference, type Ratio, ratio } from '@/lib/units/quantity';
import { isolated } from './isolated';
import { counted, listing } from './listing';
import { settingText } from './settings';
import { type Clock, clockText, windowText } from './times';
import type { Voice } from './voice';

/** One question of the night with its answer: the number first, then what it rests on. */
export type LookBackAnswer = {
  readonly question: string;
  readonly answer: string;
  readonly lines: readonly string[];
};

export type AfterVoice = Pick<Voice, 'units'> & { readonly clock: Clock };

const FORECAST = 'Was the forecast off?';
const PLAN = 'Was the plan off?';
const PERFECT = 'What would perfect knowledge have done?';

export function afterAnswers(review: NightReview, voice: AfterVoice): readonly LookBackAnswer[] {
  return [forecastAnswer(review.forecast, voice), planAnswer(review), perfectAnswer(review)];
}

const HOURS = {
  forecast: 'the forecast was',
  typed: 'the hours you typed were',
  both: 'the hours, typed and forecast, were',
} as const;

function forecastAnswer(forecast: ForecastReview, voice: AfterVoice): LookBackAnswer {
  const say = (answer: string, ...lines: readonly string[]): LookBackAnswer => ({
    question: FORECAST,
    answer,
    lines,
  });
  if (forecast.code === 'no-readings')
    return say(
      'Nobody read the air, so the forecast cannot be judged.',
      'A thermometer in the shade before each run tells it next time.',
    );
  if (forecast.code === 'none-counts')
    return say(
      'No reading can be held against the hours, so the forecast cannot be judged.',
      `${counted(forecast.readings, 'reading')} stood outside the hours, or so far from them that nobody stood by it.`,
    );
  const { bias, count, from, to, madeDuring } = forecast;
  const { clock } = voice;
  const who = HOURS[forecast.hours];
  const off = offText(bias, voice);
  const answer =
    count === 1
      ? `At ${clockText(from, clock)} ${who} ${off}.`
      : `${who.charAt(0).toUpperCase()}${who.slice(1)} ${off} on average, by ${count} readings from ${windowText(from, to, clock)}.`;
  const lines = [
    sureText(forecast, voice),
    forecast.withinThermometer ? 'That is no more than a thermometer itself may be off.' : '',
    madeDuring === null
      ? ''
      : `Held against the forecast of ${clockText(madeDuring, clock)}, the newest that is kept; earlier ones are gone.`,
  ];
  return say(answer, ...lines.filter((line) => line !== ''));
}

/** "3.2 °F too warm". */
function offText(off: number, { units }: AfterVoice): string {
  const step = formatTemperatureStep(kelvinDifference(Math.abs(off)), units, 1);
  if (step === formatTemperatureStep(kelvinDifference(0), units, 1)) return 'right';
  return `${step} too ${off > 0 ? 'warm' : 'cold'}`;
}

function sureText(read: Extract<ForecastReview, { code: 'read' }>, voice: AfterVoice): string {
  if (read.count === 1) return 'One reading speaks for its own hour, and not for the night.';
  const range = rangeText(read, voice);
  return read.spread === null
    ? `${range}; too few readings to tell a spread.`
    : `${range}, with a spread of ±${formatTemperatureStep(read.spread, voice.units, 1)}.`;
}

/** "From 3.6 °F to 6.3 °F too warm", "From 0.4 °F too cold to 0.5 °F too warm". */
function rangeText(
  { least, most }: { readonly least: number; readonly most: number },
  voice: AfterVoice,
): string {
  const [near, far] = Math.abs(least) <= Math.abs(most) ? [least, most] : [most, least];
  const [from, to] = [offText(near, voice), offText(far, voice)];
  if (from === to) return 'All of them alike';
  if (near * far <= 0) return `From ${offText(least, voice)} to ${offText(most, voice)}`;
  return `From ${formatTemperatureStep(kelvinDifference(Math.abs(near)), voice.units, 1)} to ${to}`;
}

function planAnswer({ compared, runs, known }: NightReview): LookBackAnswer {
  const say = (answer: string, ...lines: readonly string[]): LookBackAnswer => ({
    question: PLAN,
    answer,
    lines,
  });
  if (compared === null)
    return say(
      'Nobody read the air and no run was judged, so the plan cannot be judged.',
      'Log how the runs went: a look at the plugs still tells it.',
    );
  const { planned } = compared;
  if (planned === null)
    return say(
      'No plan was accepted for every run, so there is none to judge.',
      ...madeLines(compared.made, runs),
    );
  const kept = planned.lean.length + planned.rich.length === 0;
  return say(
    kept
      ? `No: ${lowered(outsideText(planned, runs, 'as planned'))}`
      : outsideText(planned, runs, 'as planned'),
    `Judged by ${listing([
      ...(known.readings === 0 ? [] : [counted(known.readings, 'reading')]),
      ...(known.verdicts === 0 ? [] : [counted(known.verdicts, 'verdict')]),
    ])}.`,
    ...madeLines(compared.made, runs),
    ...verdictLines(runs),
  );
}

function madeLines(made: Tally | null, runs: readonly RunReview[]): readonly string[] {
  return made === null
    ? ['Nobody said which jets were in, so the runs as made are not judged.']
    : [`As made: ${lowered(outsideText(made, runs, 'on what was in'))}`];
}

/** What the plugs said against the plan stands beside what the planner says of it, whichever of the two is right. */
function verdictLines(runs: readonly RunReview[]): readonly string[] {
  const of = (side: 'lean' | 'rich') => runs.flatMap(({ log }, i) => (log?.verdict === side ? [i] : []));
  const said = (['lean', 'rich'] as const).flatMap((side) =>
    of(side).length === 0 ? [] : [`${side} in ${namesOf(of(side), runs)}`],
  );
  return said.length === 0 ? [] : [`The log says ${said.join(', ')}.`];
}

const lowered = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

/** "2 runs of 8 lean, or possibly lean, as planned: Round 7 and Round 8; none too rich." */
function outsideText({ lean, rich }: Tally, runs: readonly RunReview[], how: string): string {
  const all = runs.filter(({ stood }) => stood !== null).length;
  if (lean.length + rich.length === 0) return `Every run kept its limits ${how}.`;
  const leanText =
    lean.length === 0
      ? `No run was lean ${how}`
      : `${lean.length} of ${counted(all, 'run')} lean, or possibly lean, ${how}: ${namesOf(lean, runs)}`;
  const richText =
    rich.length === 0 ? 'none too rich' : `${counted(rich.length, 'run')} too rich: ${namesOf(rich, runs)}`;
  return `${leanText}; ${richText}.`;
}

function namesOf(of: readonly number[], runs: readonly RunReview[]): string {
  const [first, last] = [of[0], of.at(-1)];
  const name = (run: number | undefined): string =>
    run === undefined ? '' : isolated(runs[run]?.name ?? '');
  if (first !== undefined && last !== undefined && of.length > 2 && last - first === of.length - 1)
    return `${name(first)} to ${name(last)}`;
  return listing(of.map(name));
}

function perfectAnswer({ compared, runs }: NightReview): LookBackAnswer {
  const say = (answer: string, ...lines: readonly string[]): LookBackAnswer => ({
    question: PERFECT,
    answer,
    lines,
  });
  if (compared === null) return say('Nobody knows more of this night than the forecast did.');
  const { perfect, made, planned } = compared;
  const bad = perfect.lean.length + perfect.rich.length;
  const against = made ?? planned;
  return say(
    against === null ? `${counted(perfect.swaps, 'swap')} between the runs.` : againstText(perfect, against),
    ...(against === null
      ? []
      : [made === null ? 'Against the night as planned.' : 'Against the night as made.']),
    `${stintsText(perfect, runs)}.`,
    ...(bad === 0 ? [] : [`Even so: ${lowered(outsideText(perfect, runs, 'with it'))}`]),
    'It plans with every reading and verdict known before the first run, and is as perfect as they are many.',
  );
}

/** "2 swaps instead of 1, no run lean instead of 2, and the same power." */
function againstText(perfect: Tally, against: Tally): string {
  const instead = (now: string, before: number, same: boolean): string =>
    same ? now : `${now} instead of ${before}`;
  const none = (count: number): string => (count === 0 ? 'no run' : counted(count, 'run'));
  const lean = perfect.lean.length === 0 && against.lean.length === 0;
  return [
    instead(counted(perfect.swaps, 'swap'), against.swaps, perfect.swaps === against.swaps),
    lean
      ? 'no run lean'
      : instead(
          `${none(perfect.lean.length)} lean`,
          against.lean.length,
          perfect.lean.length === against.lean.length,
        ),
    `${powerText(against.loss, perfect.loss)}.`,
  ].join(', ');
}

/** "420 from Round 1, 430 from Round 6". */
export function stintsText({ stints }: Tally, runs: readonly RunReview[]): string {
  const [only] = stints;
  if (stints.length === 1 && only !== undefined) return `${settingText(only.setting)} all night`;
  return stints
    .map(({ setting, firstRun }) => `${settingText(setting)} from ${isolated(runs[firstRun]?.name ?? '')}`)
    .join(', ');
}

/** Half of the last digit a power is printed with. */
const SHOWS = 0.0005;

/** Power of perfect knowledge over what was made: "0.3 % more power". Often there is none to gain. */
function powerText(loss: Ratio, perfect: Ratio): string {
  const gain = (1 - perfect) / (1 - loss) - 1;
  if (Math.abs(gain) < SHOWS) return 'and the same power';
  return `and ${formatPercent(ratio(Math.abs(gain)), 1)} ${gain > 0 ? 'more' : 'less'} power`;
}

/** Before the last run is over there is nothing to look back on. */
export function notOverSentence(end: Instant, clock: Clock): string {
  return `The last run ends at ${clockText(end, clock)}. Come back then to see how forecast and plan held.`;
}
