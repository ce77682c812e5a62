import type { ForecastReview, NightReview, RunReview, Stood, Tally } from '@/lib/after/review';
import type { Instant } from '@/lib/time/instant';
import { formatPercent, formatTemperature, formatTemperatureStep } from '@/lib/units/format';
import { kelvinDifference, type Ratio, ratio } from '@/lib/units/quantity';
import { shortCount } from './counts';
import { GRADE_WORD } from './grades';
import { counted, listing } from './listing';
import { verdictText } from './log';
import { settingText } from './settings';
import { type Clock, clockText, windowText } from './times';
import type { Voice } from './voice';

/** One question of the night with its answer: the number first, then what it rests on. */
export type Answer = {
  readonly question: string;
  readonly answer: string;
  readonly lines: readonly string[];
};

export type AfterVoice = Pick<Voice, 'units'> & { readonly clock: Clock };

const FORECAST = 'Was the forecast off?';
const PLAN = 'Was the plan off?';
const PERFECT = 'What would perfect knowledge have done?';

export function afterAnswers(review: NightReview, voice: AfterVoice): readonly Answer[] {
  return [forecastAnswer(review.forecast, voice), planAnswer(review), perfectAnswer(review)];
}

const HOURS = {
  forecast: 'the forecast was',
  typed: 'the hours you typed were',
  both: 'the hours, typed and forecast, were',
} as const;

function forecastAnswer(forecast: ForecastReview, voice: AfterVoice): Answer {
  const say = (answer: string, ...lines: readonly string[]): Answer => ({
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
  const range = `From ${offText(read.least, voice)} to ${offText(read.most, voice)}`;
  return read.spread === null
    ? `${range}; too few readings to tell a spread.`
    : `${range}, with a spread of ±${formatTemperatureStep(read.spread, voice.units, 1)}.`;
}

function planAnswer({ compared, runs, known }: NightReview): Answer {
  const say = (answer: string, ...lines: readonly string[]): Answer => ({ question: PLAN, answer, lines });
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
  return say(
    outsideText(planned, runs, 'as planned'),
    `Judged by ${listing([
      ...(known.readings === 0 ? [] : [counted(known.readings, 'reading')]),
      ...(known.verdicts === 0 ? [] : [counted(known.verdicts, 'verdict')]),
    ])}.`,
    ...madeLines(compared.made, runs),
  );
}

function madeLines(made: Tally | null, runs: readonly RunReview[]): readonly string[] {
  return made === null
    ? ['Nobody said which jets were in, so the runs as made are not judged.']
    : [`As made: ${lowered(outsideText(made, runs, 'on what was in'))}`];
}

const lowered = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

/** "1 run of 8 was lean or may have been, as planned: Round 8. No run was too rich." */
function outsideText({ lean, rich }: Tally, runs: readonly RunReview[], how: string): string {
  const all = runs.filter(({ stood }) => stood !== null).length;
  if (lean.length + rich.length === 0) return `No: every run kept its limits ${how}.`;
  const leanText =
    lean.length === 0
      ? `no run was lean ${how}`
      : `${counted(lean.length, 'run')} of ${all} lean, or possibly lean, ${how}: ${namesOf(lean, runs)}`;
  const richText =
    rich.length === 0 ? 'none too rich' : `${counted(rich.length, 'run')} too rich: ${namesOf(rich, runs)}`;
  return `${leanText.charAt(0).toUpperCase()}${leanText.slice(1)}; ${richText}.`;
}

function namesOf(of: readonly number[], runs: readonly RunReview[]): string {
  const [first, last] = [of[0], of.at(-1)];
  const name = (run: number | undefined): string => (run === undefined ? '' : (runs[run]?.name ?? ''));
  if (first !== undefined && last !== undefined && of.length > 2 && last - first === of.length - 1)
    return `${name(first)} to ${name(last)}`;
  return listing(of.map(name));
}

function perfectAnswer({ compared, runs }: NightReview): Answer {
  const say = (answer: string, ...lines: readonly string[]): Answer => ({ question: PERFECT, answer, lines });
  if (compared === null) return say('Nobody knows more of this night than the forecast did.');
  const { perfect, made, planned } = compared;
  const against = made ?? planned;
  const bad = perfect.lean.length + perfect.rich.length;
  const swaps = `${stintsText(perfect, runs)}: ${counted(perfect.swaps, 'swap')} between the runs`;
  return say(
    against === null ? `${swaps}.` : `${swaps}, ${powerText(against.loss, perfect.loss)}.`,
    ...(bad === 0 ? [] : [`Even so: ${lowered(outsideText(perfect, runs, 'with it'))}`]),
    'It plans with every reading and verdict known before the first run, and is as perfect as they are many.',
  );
}

/** "420 from Round 1, 430 from Round 6". */
export function stintsText({ stints }: Tally, runs: readonly RunReview[]): string {
  const [only] = stints;
  if (stints.length === 1 && only !== undefined) return `${settingText(only.setting)} all night`;
  return stints
    .map(({ setting, firstRun }) => `${settingText(setting)} from ${runs[firstRun]?.name ?? ''}`)
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

/** The rows of the three nights beside each other. */
export type TallyWords = {
  readonly how: string;
  readonly jets: string;
  readonly swaps: string;
  readonly lean: string;
  readonly rich: string;
  readonly lost: string;
};

export function tallyRows({ compared, runs }: NightReview): readonly TallyWords[] {
  if (compared === null) return [];
  const { made, planned, perfect, untold } = compared;
  const row = (how: string, tally: Tally | null): readonly TallyWords[] =>
    tally === null
      ? []
      : [
          {
            how,
            jets: stintsText(tally, runs),
            swaps: String(tally.swaps),
            lean: String(tally.lean.length),
            rich: String(tally.rich.length),
            lost: formatPercent(tally.loss, 1),
          },
        ];
  return [
    ...row(
      untold === 0 ? 'As made' : `As made (${counted(untold, 'run')} not told, counted on a guess)`,
      made,
    ),
    ...row('As planned', planned),
    ...row('Perfect knowledge', perfect),
  ];
}

/** One run in the words of its row. */
export type RunWords = {
  readonly when: string;
  /** "9.3 °F ±1.2 °F", or that the hours do not reach it. */
  readonly air: string;
  /** '' where it was not kept. */
  readonly plannedFor: string;
  readonly planned: string;
  /** "420", or "not told" with what is counted on. */
  readonly made: string;
  /** "right", "lean in 12 of 64". */
  readonly stood: string;
  readonly drift: string;
  /** null: not in the log. */
  readonly verdict: string | null;
};

export function runWords(run: RunReview, { units, clock }: AfterVoice): RunWords {
  const { start, end, air, planned, made, stood, log } = run;
  return {
    when: windowText(start, end, clock),
    air:
      air === null
        ? 'no hours'
        : `${formatTemperature(air.temperature, units)} ±${formatTemperatureStep(air.sd, units, 1)}`,
    plannedFor:
      planned?.temperature === undefined || planned.temperature === null
        ? ''
        : `planned for ${formatTemperature(planned.temperature, units)}`,
    planned: planned === null ? 'no plan accepted' : `planned ${settingText(planned.setting)}`,
    made: made === null ? 'out' : made.told ? settingText(made.setting) : 'not told',
    stood:
      stood === null
        ? ''
        : `${made?.told === false ? `if on ${settingText(made.setting)}: ` : ''}${stoodText(stood)}`,
    drift: stood === null ? '' : driftText(stood),
    verdict: log === null ? null : verdictText(log),
  };
}

function stoodText({ grade, leanCount }: Stood): string {
  return grade === 'lean' ? `lean in ${shortCount(leanCount)}` : GRADE_WORD[grade];
}

/** Where it stood at its leanest, which is what an engine minds, or at its richest where that is the trouble. */
function driftText({ grade, leanest, richest }: Stood): string {
  const drift = grade === 'rich' || grade === 'drowned' ? richest : leanest;
  const percent = formatPercent(ratio(Math.abs(drift)), 1);
  if (percent === formatPercent(ratio(0), 1)) return 'as the baseline';
  return `${percent} ${drift < 0 ? 'leaner' : 'richer'}`;
}

/** Before the last run is over there is nothing to look back on. */
export function notOverSentence(end: Instant, clock: Clock): string {
  return `The last run ends at ${clockText(end, clock)}. Come back then to see how forecast and plan held.`;
}
