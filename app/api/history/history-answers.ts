import { fieldsProblem, type Problem } from '@/app/api/_http/problem';
import { parameters } from '@/app/api/_http/query';
import { lookupProblem } from '@/app/api/_http/weather-problem';
import { instantFromJson } from '@/lib/contract/event-from-json';
import { parseWith } from '@/lib/contract/parse';
import { fail, ok, type Result } from '@/lib/result/result';
import { METRIC_UNITS } from '@/lib/units/choice';
import { type Metre, metre } from '@/lib/units/quantity';
import { getHistory } from '@/lib/weather/get-history';
import { getPastAir } from '@/lib/weather/get-past-air';
import { type HistoryJson, historyToJson, type PastAirJson, pastAirToJson } from '@/lib/weather/history-json';
import type { WeatherDeps } from '@/lib/weather/weather-deps';
import { momentQuerySchema, seasonQuerySchema } from './query';

const VOICE = { zone: 'UTC', units: METRIC_UNITS };

/** The air at one past moment where `at` is given, else the seasons of some months. */
export async function historyAnswer(
  search: string,
  deps: WeatherDeps,
): Promise<Result<HistoryJson | PastAirJson, Problem>> {
  const given = parameters(search);
  return 'at' in given ? momentAnswer(given, deps) : seasonAnswer(given, deps);
}

async function seasonAnswer(given: object, deps: WeatherDeps): Promise<Result<HistoryJson, Problem>> {
  const query = parseWith(seasonQuerySchema, given);
  if (!query.ok) return fail(fieldsProblem(query.reason, VOICE));
  const { months, years, hours } = query.value;
  const season = await getHistory({ ...placeOf(query.value), months, years, ridingHours: hours }, deps);
  return season.ok ? ok(historyToJson(season.value)) : fail(lookupProblem(season.reason, VOICE));
}

async function momentAnswer(given: object, deps: WeatherDeps): Promise<Result<PastAirJson, Problem>> {
  const query = parseWith(momentQuerySchema, given);
  if (!query.ok) return fail(fieldsProblem(query.reason, VOICE));
  const air = await getPastAir({ ...placeOf(query.value), at: instantFromJson(query.value.at) }, deps);
  return air.ok ? ok(pastAirToJson(air.value)) : fail(lookupProblem(air.reason, VOICE));
}

type QueryPlace = { readonly lat: number; readonly lon: number; readonly elevation?: number | undefined };

function placeOf({ lat, lon, elevation }: QueryPlace): {
  latitude: number;
  longitude: number;
  elevation: Metre | null;
} {
  return { latitude: lat, longitude: lon, elevation: elevation === undefined ? null : metre(elevation) };
}
