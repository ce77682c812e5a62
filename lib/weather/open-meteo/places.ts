import { ok, type Result } from '@/lib/result/result';
import { zoneExists } from '@/lib/time/zone';
import { metre } from '@/lib/units/quantity';
import { parseAnswer } from '@/lib/weather/parse-answer';
import type { Place } from '@/lib/weather/place';
import type { SourceProblem } from '@/lib/weather/problem';
import type { WeatherDeps } from '@/lib/weather/weather-deps';
import { askOpenMeteo } from './ask-open-meteo';
import { type OpenMeteoPlaces, openMeteoPlacesSchema } from './schema';

/** Places of a name, from GeoNames by way of Open-Meteo. */
export async function requestPlaces(
  name: string,
  deadline: AbortSignal,
  deps: WeatherDeps,
): Promise<Result<readonly Place[], SourceProblem>> {
  const json = await askOpenMeteo(
    {
      host: 'openMeteoGeocoding',
      path: '/v1/search',
      parameters: { name, count: '20', language: 'en', format: 'json' },
    },
    deadline,
    deps,
  );
  if (!json.ok) return json;
  const wire = parseAnswer(openMeteoPlacesSchema, json.value);
  return wire.ok ? ok(adaptPlaces(wire.value, name)) : wire;
}

/** The wire's results as places; those that bear the name come before those known under it in some other language. */
export function adaptPlaces(wire: OpenMeteoPlaces, name: string): readonly Place[] {
  const places = (wire.results ?? [])
    .filter(({ latitude, longitude }) => Math.abs(latitude) <= 90 && Math.abs(longitude) <= 180)
    .map(
      (result): Place => ({
        name: result.name,
        region: [result.admin2, result.admin1, result.country]
          .filter((part) => part !== undefined)
          .join(', '),
        latitude: result.latitude,
        longitude: result.longitude,
        elevation: result.elevation === undefined ? null : metre(result.elevation),
        zone: result.timezone !== undefined && zoneExists(result.timezone) ? result.timezone : null,
      }),
    );
  const bearsName = (place: Place): boolean => plain(place.name).startsWith(plain(name));
  return [...places.filter(bearsName), ...places.filter((place) => !bearsName(place))];
}

/** Without case and accents. */
function plain(text: string): string {
  return text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();
}
