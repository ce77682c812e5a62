import { RANGE, within } from '@/lib/air/ranges';
import { fail, ok, type Result } from '@/lib/result/result';
import { type Metre, metre } from '@/lib/units/quantity';
import { parseAnswer } from '@/lib/weather/parse-answer';
import type { Site } from '@/lib/weather/place';
import type { SourceProblem } from '@/lib/weather/problem';
import type { WeatherDeps } from '@/lib/weather/weather-deps';
import { askOpenMeteo } from './ask-open-meteo';
import { points } from './ask-sites';
import { openMeteoElevationSchema } from './schema';

/** Heights of the ground at points, from the 90 m Copernicus model; the service takes a hundred at once. */
export async function requestElevations(
  sites: readonly Site[],
  deadline: AbortSignal,
  deps: WeatherDeps,
): Promise<Result<readonly Metre[], SourceProblem>> {
  const json = await askOpenMeteo(
    { host: 'openMeteo', path: '/v1/elevation', parameters: points(sites) },
    deadline,
    deps,
  );
  if (!json.ok) return json;
  const wire = parseAnswer(openMeteoElevationSchema, json.value);
  if (!wire.ok) return wire;
  const heights = wire.value.elevation;
  if (heights.length !== sites.length) return fail({ code: 'unexpected-shape', field: 'elevation' });
  const wrong = heights.find((height) => !within(height, RANGE.elevation));
  return wrong === undefined
    ? ok(heights.map(metre))
    : fail({ code: 'implausible', field: 'elevation', value: wrong });
}
