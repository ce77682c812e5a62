import { fail, ok, type Result } from '@/lib/result/result';
import { HOUR_MS, instant } from '@/lib/time/instant';
import { parseAnswer } from '@/lib/weather/parse-answer';
import type { Coordinates } from '@/lib/weather/place';
import type { SourceProblem } from '@/lib/weather/problem';
import { coordinate } from '@/lib/weather/request/address';
import type { WeatherDeps } from '@/lib/weather/weather-deps';
import { askWeatherGov, isNotFound } from './ask';
import { type WeatherGovPoint, weatherGovPointSchema } from './schema';

/** How long a point's grid cell is believed. */
const CELL_KEPT_MS = 7 * 24 * HOUR_MS;

export type CellQuestion = { readonly site: Coordinates; readonly deadline: AbortSignal };

const cellKey = ({ latitude, longitude }: Coordinates): string =>
  `${coordinate(latitude)},${coordinate(longitude)}`;

/** The grid cell of a point, from memory or asked for; `kept` tells which. */
export async function gridCell(
  question: CellQuestion,
  deps: WeatherDeps,
): Promise<Result<{ cell: WeatherGovPoint; kept: boolean }, SourceProblem>> {
  const kept = deps.memory.gridCells.get(cellKey(question.site));
  if (kept !== undefined && deps.now() < kept.freshUntil) return ok({ cell: kept.value, kept: true });
  const cell = await lookUpCell(question, deps);
  return cell.ok ? ok({ cell: cell.value, kept: false }) : cell;
}

/** Asks for the cell anew. */
export async function lookUpCell(
  { site, deadline }: CellQuestion,
  deps: WeatherDeps,
): Promise<Result<WeatherGovPoint, SourceProblem>> {
  const reply = await askWeatherGov(`/points/${cellKey(site)}`, deadline, deps);
  if (!reply.ok) return isNotFound(reply.reason) ? fail({ code: 'outside-area' }) : reply;
  const wire = parseAnswer(weatherGovPointSchema, reply.value);
  if (!wire.ok) return wire;
  const cell = wire.value.properties;
  deps.memory.gridCells.set(cellKey(site), { value: cell, freshUntil: instant(deps.now() + CELL_KEPT_MS) });
  return ok(cell);
}
