import type { PlanProblem } from '@/lib/plan/types';
import type { ClockZone } from '@/lib/time/zone';
import { dateClockText } from './times';

/** Why there is no plan, and what to do next. `runNames` are the names of the runs as they were given. */
export function planProblemSentence(
  problem: PlanProblem,
  context: { readonly zone: ClockZone; readonly runNames: readonly string[] },
): string {
  const { zone, runNames } = context;
  switch (problem.code) {
    case 'no-runs':
      return 'There is no run to plan for. Add at least one run with a start and an end.';
    case 'no-hours':
      return 'The plan needs the temperature of each hour. Get a forecast, or type two temperatures or more.';
    case 'empty-box':
      return 'The box is empty. Add the main jets you own, those in the engine too.';
    case 'too-few-jets':
      return `The box does not hold enough jets for ${problem.carburettors} carburettors. Add how many you own of each size.`;
    case 'setting-does-not-fit':
      return `What is in now, or what a run was made with, names ${problem.mains} jets for ${problem.carburettors} carburettors. Type one jet for each carburettor.`;
    case 'hours-do-not-cover-any-run':
      return `The hours run from ${dateClockText(problem.hoursStart, zone)} to ${dateClockText(problem.hoursEnd, zone)}; no run lies in them. Check the date of the runs and of the hours.`;
    case 'run-ends-before-it-starts':
      return `${runNames[problem.run] ?? `Run ${problem.run + 1}`} ends before it starts. A run past midnight needs the next day’s date on its end.`;
    case 'too-many-runs':
      return `At most ${problem.limit} runs can be planned at once. Split the event.`;
    case 'too-much-at-once':
      return tooMuch(problem);
  }
}

function tooMuch({
  machines,
  settings,
  runHours,
}: Extract<PlanProblem, { code: 'too-much-at-once' }>): string {
  const asked = `${settings} settings (jets times trim positions) over ${Math.round(runHours)} hours of runs`;
  return machines === 1
    ? `This is too much to work out at once: ${asked}. Leave out jets and trim positions you won’t use, or split the event.`
    : `${machines} machines are too much to work out at once, with up to ${asked}. Ask for fewer machines at a time.`;
}
