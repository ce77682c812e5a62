import type { Contradiction, LeftOut } from '@/lib/contract/contradiction';
import { fail, ok, type Result } from '@/lib/result/result';
import type { AnswerProblem } from '@/lib/weather/problem';
import type { ServiceAnswer, ServiceHour } from '@/lib/weather/service-hour';
import { checkHours, checkIssue } from './age';
import { checkConstancy } from './constancy';
import type { Expected } from './expected';
import type { Finding } from './finding';
import { checkPressureJumps, checkTemperatureJumps } from './jumps';
import { MOST_LEFT_OUT } from './limits';
import { checkMoisture } from './moisture';
import { checkHeight, checkPlace } from './place';
import { checkPressure } from './pressure';
import { checkRanges } from './ranges';

/** An answer that agrees with itself, without the hours that did not. */
export type Checked = { readonly answer: ServiceAnswer; readonly leftOut: readonly LeftOut[] };

type Check = {
  readonly code: Contradiction;
  readonly run: (answer: ServiceAnswer, expected: Expected) => Finding;
};

/** In this order: what explains most comes first, and each is asked of the hours that the ones before have left. */
const CHECKS: readonly Check[] = [
  { code: 'other-place', run: checkPlace },
  { code: 'other-height', run: checkHeight },
  { code: 'old-issue', run: checkIssue },
  { code: 'other-hours', run: checkHours },
  { code: 'other-hours', run: checkRanges },
  { code: 'two-values', run: ({ conflicting }) => ({ kind: 'hours', at: conflicting }) },
  { code: 'flat', run: checkConstancy },
  { code: 'jump', run: checkTemperatureJumps },
  { code: 'jump', run: checkPressureJumps },
  { code: 'humidity-disagrees', run: checkMoisture },
  { code: 'pressure-disagrees', run: checkPressure },
];

/** Every check on an answer of any service: the answer without the hours that are wrong, or why none of it is believed. */
export function checkAnswer(answer: ServiceAnswer, expected: Expected): Result<Checked, AnswerProblem> {
  const leftOut = new Map<ServiceHour['at'], Contradiction>();
  const told = answer.hours.filter(({ temperature }) => temperature !== null).length;
  let left = answer;
  for (const { code, run } of CHECKS) {
    const finding = run(left, expected);
    if (finding.kind === 'answer') return fail(finding.problem);
    if (finding.at.length === 0) continue;
    for (const at of finding.at) leftOut.set(at, code);
    // So much is wrong that the rest is right by chance.
    if (leftOut.size > MOST_LEFT_OUT * told) return fail({ code });
    left = { ...left, hours: left.hours.map((hour) => (leftOut.has(hour.at) ? emptied(hour) : hour)) };
  }
  return ok({
    answer: left,
    leftOut: [...leftOut].map(([at, code]) => ({ at, code })).sort((a, b) => a.at - b.at),
  });
}

/** Listed without a value, like any other hour that a service does not know. */
function emptied(hour: ServiceHour): ServiceHour {
  return {
    ...hour,
    temperature: null,
    relativeHumidity: null,
    dewPoint: null,
    stationPressure: null,
    seaLevelPressure: null,
  };
}
