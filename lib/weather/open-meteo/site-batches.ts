import type { Site } from '@/lib/weather/place';
import type { SourceProblem } from '@/lib/weather/problem';
import { type Batches, createBatches } from '@/lib/weather/request/batches';

/** Sites that wait for room in a request. */
export type SiteBatches = Batches<Site, unknown, SourceProblem>;

/** Half of what an answer may weigh, at some 15 kB a place; the service takes up to 1000 (open-meteo source). */
const MOST_TOGETHER = 50;

export function createSiteBatches(mostWaiting: number): SiteBatches {
  return createBatches<Site, unknown, SourceProblem>(MOST_TOGETHER, mostWaiting);
}
