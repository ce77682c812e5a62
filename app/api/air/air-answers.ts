import { airAnswer } from '@/lib/contract/air-answer';
import { airFromJson, lacksHumidity } from '@/lib/contract/air-from-json';
import {
  type AirNote,
  type AirRequestJson,
  type AirsAnswer,
  airRequestSchema,
} from '@/lib/contract/air-request';
import { parseWith } from '@/lib/contract/parse';
import { pressureSaid } from '@/lib/contract/pressure';
import { airPressureDoubt } from '@/lib/contract/pressure-doubts';
import type { ContractProblem } from '@/lib/contract/problem';
import { fail, ok, type Result } from '@/lib/result/result';
import { METRIC_UNITS } from '@/lib/units/choice';
import { humidityAssumedSentence, pressureEstimateSentence } from '@/lib/words/assumptions';
import { pressureQuestion } from '@/lib/words/pressure-doubts';

/** Moist air for every state sent, in the same order, or every state that is no air. */
export function airAnswers(body: unknown): Result<AirsAnswer, readonly ContractProblem[]> {
  const request = parseWith(airRequestSchema, body);
  if (!request.ok) return request;
  const { states } = request.value;
  const airs = states.map((state, i) => airFromJson(state, ['states', i]));
  const problems = airs.flatMap((air) => (air.ok ? [] : air.reason));
  if (problems.length > 0) return fail(problems);
  return ok({
    states: airs.flatMap((air) => (air.ok ? [airAnswer(air.value)] : [])),
    warnings: notes(states),
  });
}

function notes(states: AirRequestJson['states']): AirNote[] {
  const humidity = states.filter(lacksHumidity).length;
  const pressure = states.filter((state) => pressureSaid(state) === null).length;
  return [
    ...doubts(states),
    ...(humidity > 0
      ? [{ code: 'humidity-assumed' as const, states: humidity, message: humidityAssumedSentence() }]
      : []),
    ...(pressure > 0
      ? [{ code: 'pressure-is-estimate' as const, states: pressure, message: pressureEstimateSentence() }]
      : []),
  ];
}

/** States whose pressure is likely of another kind than it was sent as; the first of them in words. */
function doubts(states: AirRequestJson['states']): AirNote[] {
  const found = states.map(airPressureDoubt);
  const first = found.findIndex((doubt) => doubt !== null);
  const doubt = found[first];
  if (doubt === undefined || doubt === null) return [];
  const count = found.filter((each) => each !== null).length;
  const message = `states[${first}]: ${pressureQuestion(doubt, METRIC_UNITS)}`;
  return [{ code: 'pressure-in-doubt', states: count, message }];
}
