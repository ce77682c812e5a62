import type { PostedDb } from '@/lib/posted/tables';
import type { Push, PushKeys, PushOutcome } from '@/lib/push/send-push';
import type { Result } from '@/lib/result/result';
import type { Instant } from '@/lib/time/instant';
import type { Forecast } from '@/lib/weather/forecast';
import type { ForecastQuestion } from '@/lib/weather/get-forecast';
import type { WeatherProblem } from '@/lib/weather/problem';

/** What boards need of the world. */
export type BoardDeps = {
  readonly now: () => Instant;
  /** Opens the database, and makes it where nothing was ever posted. */
  readonly db: () => Promise<PostedDb>;
  /** The database where there is one; null where nothing was ever posted. */
  readonly dbIfAny: () => Promise<PostedDb | null>;
  readonly fetchForecast: (question: ForecastQuestion) => Promise<Result<Forecast, WeatherProblem>>;
  /** Keys of this server, made at first need. */
  readonly pushKeys: (db: PostedDb) => Promise<PushKeys>;
  /** Origins of push services beside the known ones. */
  readonly ownServices: () => readonly string[];
  readonly send: (push: Push, keys: PushKeys) => Promise<PushOutcome>;
  /** Names this process among those that share the database. */
  readonly me: string;
  /** Something may have become due. */
  readonly wake: () => void;
};
