import { fail, type Result } from '@/lib/result/result';
import { HOUR_MS } from '@/lib/time/instant';
import { lookUp } from './lookup';
import { requestPlaces } from './open-meteo/places';
import type { Place } from './place';
import type { LookupProblem } from './problem';
import type { WeatherDeps } from './weather-deps';

/** The service finds nothing for less. */
const SHORTEST_NAME = 2;
const LONGEST_NAME = 80;
const PLACES_FRESH_MS = 30 * 24 * HOUR_MS;

/** Places of a name, the likeliest first; an empty list where there is none. */
export async function getPlaces(
  text: string,
  deps: WeatherDeps,
): Promise<Result<readonly Place[], LookupProblem>> {
  const name = cleanName(text);
  if ([...name].length < SHORTEST_NAME) return fail({ code: 'name-too-short' });
  const question = {
    key: name.toLowerCase(),
    freshMs: PLACES_FRESH_MS,
    ask: (deadline: AbortSignal) => requestPlaces(name, deadline, deps),
  };
  return lookUp(deps.memory.places, question, deps);
}

/** Without control characters and doubled spaces, in one Unicode form, cut to a sensible length. */
function cleanName(text: string): string {
  const words = text
    .normalize('NFC')
    .replace(/[\p{C}\p{Z}\s]+/gu, ' ')
    .trim();
  return [...words].slice(0, LONGEST_NAME).join('').trim();
}
