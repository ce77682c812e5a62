import * as z from 'zod/mini';
import { fieldsProblem, type Problem } from '@/app/api/_http/problem';
import { latitudeText, longitudeText, parameters } from '@/app/api/_http/query';
import { lookupProblem } from '@/app/api/_http/weather-problem';
import { parseWith } from '@/lib/contract/parse';
import { fail, ok, type Result } from '@/lib/result/result';
import { METRIC_UNITS } from '@/lib/units/choice';
import { getElevation } from '@/lib/weather/get-elevation';
import { getPlaces } from '@/lib/weather/get-places';
import { type PlacesJson, placesToJson } from '@/lib/weather/places-json';
import type { WeatherDeps } from '@/lib/weather/weather-deps';

const byName = z.strictObject({
  q: z
    .string({ error: 'is missing: expected a name, or lat and lon' })
    .check(z.maxLength(200, 'expected at most 200 characters')),
});
const byPoint = z.strictObject({ lat: latitudeText, lon: longitudeText });

const VOICE = { zone: 'UTC', units: METRIC_UNITS };

/** Places of a name, or the one place that is a point, with the height of its ground. */
export async function placeAnswer(search: string, deps: WeatherDeps): Promise<Result<PlacesJson, Problem>> {
  const given = parameters(search);
  return 'lat' in given || 'lon' in given ? pointAnswer(given, deps) : nameAnswer(given, deps);
}

async function nameAnswer(given: object, deps: WeatherDeps): Promise<Result<PlacesJson, Problem>> {
  const query = parseWith(byName, given);
  if (!query.ok) return fail(fieldsProblem(query.reason, VOICE));
  const places = await getPlaces(query.value.q, deps);
  return places.ok ? ok(placesToJson(places.value)) : fail(lookupProblem(places.reason, VOICE));
}

async function pointAnswer(given: object, deps: WeatherDeps): Promise<Result<PlacesJson, Problem>> {
  const query = parseWith(byPoint, given);
  if (!query.ok) return fail(fieldsProblem(query.reason, VOICE));
  const point = { latitude: query.value.lat, longitude: query.value.lon };
  const elevation = await getElevation(point, deps);
  if (!elevation.ok) return fail(lookupProblem(elevation.reason, VOICE));
  return ok(placesToJson([{ ...point, name: '', region: '', elevation: elevation.value, zone: null }]));
}
