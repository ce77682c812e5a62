import { RANGE, within } from '@/lib/air/ranges';
import { fail, ok, type Result } from '@/lib/result/result';
import { HOUR_MS, instant } from '@/lib/time/instant';
import { metre } from '@/lib/units/quantity';
import { checkObservation } from '@/lib/weather/checks/check-observation';
import { FARTHEST_CELL_M } from '@/lib/weather/checks/limits';
import { distanceM } from '@/lib/weather/distance';
import { parseAnswer } from '@/lib/weather/parse-answer';
import type { Coordinates } from '@/lib/weather/place';
import type { SourceProblem } from '@/lib/weather/problem';
import type { Observed } from '@/lib/weather/stations/observed';
import type { StationProblem } from '@/lib/weather/stations/station-problem';
import type { WeatherDeps } from '@/lib/weather/weather-deps';
import { adaptObservation, type Station } from './adapt-observation';
import { coversUnitedStates } from './area';
import { askWeatherGov, isNotFound } from './ask';
import { type CellQuestion, gridCell, lookUpCell } from './grid-cell';
import type { WeatherGovPoint } from './schema';
import { latestSchema, type StationList, stationListSchema } from './station-schema';

/** As many as one looks at; each is one request. Judgement. */
const MOST_ASKED = 4;
/** How long a cell's list of stations is believed. */
const LIST_KEPT_MS = 7 * 24 * HOUR_MS;

/** The newest observations around a place: the nearest stations are asked, and what they said is checked. */
export async function requestObservations(
  question: CellQuestion,
  deps: WeatherDeps,
): Promise<Result<Observed, SourceProblem>> {
  if (!coversUnitedStates(question.site)) return fail({ code: 'outside-area' });
  const listed = await stationsAround(question, deps);
  if (!listed.ok) return listed;
  const near = nearest(listed.value, question.site);
  if (near.length === 0) return fail({ code: 'no-hours' });
  const answers = await Promise.all(
    near.map(async (station) => ({ station, answer: await latest(station, question, deps) })),
  );
  const observations = answers.flatMap(({ answer }) => (answer.ok ? [answer.value] : []));
  const leftOut = answers.flatMap(({ station, answer }) =>
    answer.ok ? [] : [{ station: station.id, code: answer.reason.code }],
  );
  // Where the service itself is out there is nothing to remember.
  const [first, ...others] = answers.flatMap(({ answer }) => (answer.ok ? [] : [answer.reason]));
  if (observations.length === 0 && first !== undefined && isOutage(first) && others.every(isOutage))
    return fail(first);
  return ok({ observations, leftOut });
}

const OUT: ReadonlySet<string> = new Set([
  'timeout',
  'unreachable',
  'redirected',
  'too-large',
  'not-json',
  'bad-status',
  'rate-limited',
  'resting',
  'busy',
  'bad-address',
]);

/** True where the service itself did not answer. */
function isOutage(problem: StationProblem): problem is SourceProblem {
  return OUT.has(problem.code);
}

async function stationsAround(
  question: CellQuestion,
  deps: WeatherDeps,
): Promise<Result<readonly Station[], SourceProblem>> {
  const known = await gridCell(question, deps);
  if (!known.ok) return known;
  const first = await stationsOf(known.value.cell, question, deps);
  if (first.ok || !known.value.kept || !isNotFound(first.reason)) return first;
  const renewed = await lookUpCell(question, deps);
  return renewed.ok ? stationsOf(renewed.value, question, deps) : renewed;
}

async function stationsOf(
  { gridId, gridX, gridY }: WeatherGovPoint,
  { deadline }: CellQuestion,
  deps: WeatherDeps,
): Promise<Result<readonly Station[], SourceProblem>> {
  const path = `/gridpoints/${gridId}/${gridX},${gridY}/stations`;
  const kept = deps.memory.stations.get(path);
  if (kept !== undefined && deps.now() < kept.freshUntil) return ok(kept.value);
  const reply = await askWeatherGov(path, deadline, deps);
  if (!reply.ok) return reply;
  const wire = parseAnswer(stationListSchema, reply.value);
  if (!wire.ok) return wire;
  const stations = wire.value.features.filter(isOnTheGround).map(stationOf);
  deps.memory.stations.set(path, { value: stations, freshUntil: instant(deps.now() + LIST_KEPT_MS) });
  return ok(stations);
}

type Listed = StationList['features'][number];

function isOnTheGround({ properties: { elevation } }: Listed): boolean {
  return elevation.unitCode === 'wmoUnit:m' && within(elevation.value, RANGE.elevation);
}

function stationOf({ geometry, properties }: Listed): Station {
  const [longitude, latitude] = geometry.coordinates;
  return {
    id: properties.stationIdentifier,
    name: properties.name,
    place: { latitude, longitude },
    elevation: metre(properties.elevation.value),
  };
}

function nearest(stations: readonly Station[], site: Coordinates): readonly Station[] {
  return stations
    .map((station) => ({ station, away: distanceM(station.place, site) }))
    .filter(({ away }) => away <= FARTHEST_CELL_M)
    .sort((a, b) => a.away - b.away)
    .slice(0, MOST_ASKED)
    .map(({ station }) => station);
}

async function latest(
  station: Station,
  { deadline }: CellQuestion,
  deps: WeatherDeps,
): Promise<Result<Observed['observations'][number], StationProblem>> {
  const reply = await askWeatherGov(`/stations/${station.id}/observations/latest`, deadline, deps);
  if (!reply.ok) return reply;
  const wire = parseAnswer(latestSchema, reply.value);
  if (!wire.ok) return wire;
  const { geometry, properties } = wire.value;
  const told = adaptObservation({ ...properties, geometry }, station);
  return told.ok ? checkObservation(told.value, { station, now: deps.now() }) : told;
}
