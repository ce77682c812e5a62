import * as z from 'zod/mini';
import { fieldsProblem, type Problem } from '@/app/api/_http/problem';
import { latitudeText, longitudeText, parameters } from '@/app/api/_http/query';
import { lookupProblem } from '@/app/api/_http/weather-problem';
import { parseWith } from '@/lib/contract/parse';
import { fail, ok, type Result } from '@/lib/result/result';
import { METRIC_UNITS } from '@/lib/units/choice';
import { getObservations } from '@/lib/weather/get-observations';
import { type ObservationsJson, observationsToJson } from '@/lib/weather/observations-json';
import type { WeatherDeps } from '@/lib/weather/weather-deps';

const querySchema = z.strictObject({ lat: latitudeText, lon: longitudeText });

const VOICE = { zone: 'UTC', units: METRIC_UNITS };

/** What the stations around a point observed last. */
export async function observationAnswer(
  search: string,
  deps: WeatherDeps,
): Promise<Result<ObservationsJson, Problem>> {
  const query = parseWith(querySchema, parameters(search));
  if (!query.ok) return fail(fieldsProblem(query.reason, VOICE));
  const place = { latitude: query.value.lat, longitude: query.value.lon };
  const observed = await getObservations(place, deps);
  return observed.ok
    ? ok(observationsToJson(observed.value, place))
    : fail(lookupProblem(observed.reason, VOICE));
}
