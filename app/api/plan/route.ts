import { callerOf } from '@/app/api/_http/caller-of';
import { handle, refusedBut } from '@/app/api/_http/handle';
import { fieldsProblem } from '@/app/api/_http/problem';
import { readJsonBody } from '@/app/api/_http/read-json-body';
import { ANSWERS } from '@/app/api/_planning/jobs';
import { planApart } from '@/app/api/_planning/plan-apart';
import { weatherFor } from '@/app/api/_weather/server-weather';
import { instantFromJson } from '@/lib/contract/event-from-json';
import { parseWith } from '@/lib/contract/parse';
import { planRequestSchema } from '@/lib/contract/plan-request';
import { fail, ok } from '@/lib/result/result';
import { instant } from '@/lib/time/instant';
import { METRIC_UNITS } from '@/lib/units/choice';
import { getForecast } from '@/lib/weather/get-forecast';
import { hoursOfRequest } from './hours-of-request';

/** A hundred engines with full boxes and sixteen days of hours fit several times over. */
const MOST_BYTES = 1_000_000;

export function POST(request: Request): Promise<Response> {
  return handle(request, async () => {
    const json = await readJsonBody(request, MOST_BYTES);
    if (!json.ok) return json;
    const parsed = parseWith(planRequestSchema, json.value);
    if (!parsed.ok) return fail(fieldsProblem(parsed.reason, { zone: 'UTC', units: METRIC_UNITS }));
    const { event, options, now } = parsed.value;
    const clock = instant(Date.now());
    const voice = {
      zone: event.timezone,
      now: now === undefined ? clock : instantFromJson(now),
      units: options.units ?? METRIC_UNITS,
      ride: event.ride,
      runNames: event.runs.map(({ name }) => name),
    };
    const hours = await hoursOfRequest(parsed.value, {
      fetchForecast: (question) => getForecast(question, weatherFor(request)),
      voice,
    });
    if (!hours.ok) return hours;
    const planned = await planApart(ANSWERS, {
      caller: callerOf(request),
      input: [parsed.value, { ...hours.value, clock, voice }],
    });
    if (!planned.ok) return planned;
    const plans = planned.value;
    if (!plans.ok) return fail(fieldsProblem(plans.reason, voice));
    const headers = { 'content-type': 'application/json', 'cache-control': 'no-store' };
    return ok(new Response(plans.value, { headers }));
  });
}

export const { DELETE, GET, OPTIONS, PATCH, PUT } = refusedBut('POST');
