import type { Plan, PlanWarning } from '@/lib/plan/types';
import { formatPressure, formatTemperatureStep } from '@/lib/units/format';
import { kelvinDifference, pascal } from '@/lib/units/quantity';
import { markingWarning } from './marking';
import { pressureWarningSentence } from './pressure-doubts';
import { planClock, runName, runNames } from './runs';
import { jetsText } from './settings';
import { clockText, windowText } from './times';
import type { Voice } from './voice';

export type WarningWords = { readonly code: PlanWarning['code']; readonly message: string };

/** All of them; what is to be said of several runs alike is said once. */
export function warningSentences(plan: Plan, voice: Voice): readonly WarningWords[] {
  const kinds = plan.warnings.map(kindOf);
  return plan.warnings.flatMap((warning, i) => {
    if (kinds.indexOf(kindOf(warning)) !== i) return [];
    const alike = plan.warnings.filter((_, other) => kinds[other] === kinds[i]);
    const runs = alike.flatMap(runsOf);
    return [{ code: warning.code, message: warningSentence(warning, plan, voice, runs) }];
  });
}

function runsOf(warning: PlanWarning): readonly number[] {
  return 'run' in warning ? [warning.run] : [];
}

/** Alike where nothing tells two apart but the run; of runs that overlap every pair is its own. */
const kindOf = (warning: PlanWarning): string =>
  JSON.stringify(warning, (key, value) => (key === 'run' && !('other' in warning) ? undefined : value));

/** One warning in words, with what to do about it; `runs` where it is said of several alike. */
export function warningSentence(
  warning: PlanWarning,
  plan: Plan,
  voice: Voice,
  runs = runsOf(warning),
): string {
  const names = runNames(plan, runs);
  const [one, is] = runs.length > 1 ? ([false, 'are'] as const) : ([true, 'is'] as const);
  switch (warning.code) {
    case 'no-jet-rich-enough':
    case 'no-jet-lean-enough':
      return noJetWarning(warning, names, one);
    case 'swap-does-not-fit':
      return `The gap${one ? '' : 's'} before ${names} ${is} ${minutes(warning.gapMinutes)}${one ? '' : ' each'}; a swap takes ${minutes(warning.swapMinutes)}. The plan does not count on a swap there.`;
    case 'runs-overlap':
      return `${runName(plan, warning.run)} and ${runName(plan, warning.other)} overlap: check their times.`;
    case 'runs-reordered':
      return 'The runs were not in order of time; the plan sorted them.';
    case 'baseline-jet-not-in-box':
      return `The baseline jet ${warning.size} is not in the box (or not enough of them), so the plan cannot go back to it. Add it if you own it.`;
    case 'marking-in-doubt':
      return markingWarning(warning.doubt);
    case 'far-from-baseline-air':
      return `${names} ${is} far from the air the baseline was proven in: the jets are a longer guess. Check the plugs before you hold it wide open.`;
    case 'reading-outside-hours':
    case 'reading-far-off':
    case 'reading-pressure-far-off':
      return readingWarning(warning, voice);
    case 'baseline-pressure-in-doubt':
    case 'hours-pressure-in-doubt':
    case 'reading-pressure-in-doubt':
    case 'baseline-pressure-without-elevation':
      return pressureWarningSentence(warning, voice.units);
    default:
      return hoursWarning(warning, { plan, voice, names, is });
  }
}

type NoJetWarning = Extract<PlanWarning, { code: 'no-jet-rich-enough' | 'no-jet-lean-enough' }>;

function noJetWarning({ code, sizes }: NoJetWarning, names: string, one: boolean): string {
  const [lack, ask, end] =
    code === 'no-jet-rich-enough'
      ? [
          'No jet in the box will do',
          'borrow',
          one ? '. Without it do not race this run.' : '. Without it do not race these runs.',
        ]
      : ['No jet in the box is lean enough', 'ask for', ', no smaller. It runs rich, which costs power.'];
  const what = sizes === null ? 'your list of jets has none that would do' : `${ask} ${jetsText(sizes)}`;
  return `${lack} for ${names}: ${what}${end}`;
}

type HoursWarning = Extract<
  PlanWarning,
  {
    code:
      | 'run-beyond-hours'
      | 'run-before-hours'
      | 'gap-in-hours'
      | 'pressure-is-estimate'
      | 'season-not-forecast'
      | 'model-misses-clear-cold';
  }
>;

type SaidOf = {
  readonly plan: Plan;
  readonly voice: Voice;
  readonly names: string;
  readonly is: 'is' | 'are';
};

function hoursWarning(warning: HoursWarning, { plan, voice, names, is }: SaidOf): string {
  const { zone, units } = voice;
  const clock = planClock(plan, zone);
  switch (warning.code) {
    case 'run-beyond-hours':
      return `The hours end at ${clockText(warning.hoursEnd, clock)}, before ${names} ${is} over: no call there. Add hours.`;
    case 'run-before-hours':
      return `The hours begin at ${clockText(warning.hoursStart, clock)}, after the start of ${names}: no call there. Add hours.`;
    case 'gap-in-hours':
      return `There are no hours from ${windowText(warning.from, warning.to, clock)}: what lies between is a guess. Add an hour there if you can.`;
    case 'pressure-is-estimate':
      return 'No pressure was given, so the standard atmosphere at this elevation stands in. Weather moves it by up to 3 %, about one jet size: a barometer or a forecast is better.';
    case 'season-not-forecast':
      return `${names} ${is} ${warning.daysAhead} days ahead: this is a season, not a forecast. Plan again less than ten days before.`;
    case 'model-misses-clear-cold': {
      const step = formatTemperatureStep(kelvinDifference(warning.colder), units);
      return `Clear, calm and cold over snow at ${names}: weather models often miss how cold it gets. The plan counts on up to ${step} colder. Read a thermometer at the track before you run; tonight it is worth more than any forecast.`;
    }
  }
}

type ReadingWarning = Extract<
  PlanWarning,
  { code: 'reading-outside-hours' | 'reading-far-off' | 'reading-pressure-far-off' }
>;

function readingWarning(warning: ReadingWarning, { units }: Voice): string {
  switch (warning.code) {
    case 'reading-outside-hours':
      return 'A reading was taken outside the hours of the plan, so it moves nothing. Check its time.';
    case 'reading-far-off': {
      const step = formatTemperatureStep(kelvinDifference(Math.abs(warning.difference)), units);
      const way = warning.difference > 0 ? 'warmer' : 'colder';
      return `A reading is ${step} ${way} than the hours said. Was the sensor in the sun or near an engine? Confirm it or take it again.`;
    }
    case 'reading-pressure-far-off': {
      const step = formatPressure(pascal(Math.abs(warning.difference)), units);
      const way = warning.difference > 0 ? 'higher' : 'lower';
      return `A barometer reading is ${step} ${way} than the hours said. Does it show a sea-level number? It must show station pressure. Confirm it or take it again.`;
    }
  }
}

function minutes(count: number): string {
  return count === 1 ? '1 minute' : `${Math.max(0, Math.floor(count))} minutes`;
}
