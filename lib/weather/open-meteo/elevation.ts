import { RANGE, within } from '@/lib/air/ranges';
import { fail, ok, type Result } from '@/lib/result/result';
import { type Metre, metre } from '@/lib/units/quantity';
import { parseAnswer } from '@/lib/weather/parse-answer';
import type { Coordinates } from '@/lib/weather/place';
import type { SourceProblem } from '@/lib/weather/problem';
import type { WeatherDeps } from '@/lib/weather/weather-deps';
import { askOpenMeteo } from './ask-open-meteo';
import { points } from './ask-sites';
import { openMeteoElevationSchema } from './schema';

/** Height of the ground at a point, from the 90 m Copernicus model. */
export async function requestElevation(
  place: Coordinates,
  deadline: AbortSignal,
  deps: WeatherDeps,
): Promise<Result<Metre, SourceProblem>> {
  const json = await askOpenMeteo(
    { host: 'openMeteo', path: '/v1/elevation', parameters: points([{ ...place, elevation: null }]) },
    deadline,
    deps,
  );
  if (!json.ok) return json;
  const wire = parseAnswer(openMeteoElevationSchema, json.value);
  if (!wire.ok) return wire;
  // The schema asks for at least one.
  const height = wire.value.elevation[0] ?? Number.NaN;
  return within(height, RANGE.elevation)
    ? ok(metre(height))
    : fail({ code: 'implausible', field: 'elevation', value: height });
}
