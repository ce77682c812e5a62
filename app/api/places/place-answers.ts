import * as z from 'zod/mini';
import { fieldsProblem, type Problem } from '@/app/api/_http/problem';
import { latitudeText, longitudeText, parameters } from '@/app/api/_http/query';
import { lookupProblem } from '@/app/api/_http/weather-problem';
import { parseWith } from '@/lib/contract/parse';
import { fail, ok, type Result } from '@/lib/result/result';
import { METRIC_UNITS } from '@/lib/units/choice';
import { getElevations } from '@/lib/weather/get-elevations';
import { getPlaces } from '@/lib/weather/get-places';
import type { Coordinates } from '@/lib/weather/place';
import { type PlacesJson, placesToJson } from '@/lib/weather/places-json';
import type { WeatherDeps } from '@/lib/weather/weather-deps';

const byName = z.strictObject({
  q: z
    .string({ error: 'is missing: expected a name, or lat and lon' })
    .check(z.maxLength(200, 'expected at most 200 characters')),
});
const byPoint = z.strictObject({ lat: latitudeText, lon: longitudeText });

/** As many as the service gives heights for at once. */
const MOST_POINTS = 100;
const POINTS = 'pairs of degrees such as 46.79,-92.1;46.8,-92.2';
const pair = z.pipe(
  z.pipe(
    z.pipe(
      z.string(),
      z.transform((text) => text.split(',')),
    ),
    z.tuple([latitudeText, longitudeText], { error: `expected ${POINTS}` }),
  ),
  z.transform(([latitude, longitude]) => ({ latitude, longitude })),
);
const byPoints = z.strictObject({
  points: z.pipe(
    z.pipe(
      z.string(),
      z.transform((text) => text.split(';')),
    ),
    z.array(pair).check(z.maxLength(MOST_POINTS, `expected at most ${MOST_POINTS} points`)),
  ),
});

const VOICE = { zone: 'UTC', units: METRIC_UNITS };

/** Places of a name, or those that are points, with the height of their ground. */
export async function placeAnswer(search: string, deps: WeatherDeps): Promise<Result<PlacesJson, Problem>> {
  const given = parameters(search);
  if ('points' in given) return pointsAnswer(given, deps);
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
  return groundAnswer([{ latitude: query.value.lat, longitude: query.value.lon }], deps);
}

async function pointsAnswer(given: object, deps: WeatherDeps): Promise<Result<PlacesJson, Problem>> {
  const query = parseWith(byPoints, given);
  if (!query.ok) return fail(fieldsProblem(query.reason, VOICE));
  return groundAnswer(query.value.points, deps);
}

async function groundAnswer(
  points: readonly Coordinates[],
  deps: WeatherDeps,
): Promise<Result<PlacesJson, Problem>> {
  const heights = await getElevations(points, deps);
  if (!heights.ok) return fail(lookupProblem(heights.reason, VOICE));
  const ground = { name: '', region: '', zone: null };
  return ok(
    placesToJson(points.map((point, i) => ({ ...point, ...ground, elevation: heights.value[i] ?? null }))),
  );
}
