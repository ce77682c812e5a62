import type { SourceName } from '@/lib/contract/source-name';
import type { Result } from '@/lib/result/result';
import type { Expected } from './checks/expected';
import type { Coordinates, Site } from './place';
import type { SourceProblem } from './problem';
import type { Validity } from './request/attempt';
import type { ServiceAnswer } from './service-hour';
import type { WeatherDeps } from './weather-deps';

export type SourceQuestion = {
  readonly site: Site;
  /** The Last-Modified of the copy at hand, word for word; null where there is none. */
  readonly lastModified: string | null;
  readonly deadline: AbortSignal;
};

export type SourceReply =
  | { readonly kind: 'answer'; readonly answer: ServiceAnswer; readonly validity: Validity }
  | { readonly kind: 'not-modified'; readonly validity: Validity };

export type Habits = Pick<Expected, 'repeatsElevation' | 'movesTemperatureOnly'> & {
  /** Its hours begin at most this long before now [ms]. */
  readonly backMs: number;
  /** Its hours end at most this long after now [ms]. */
  readonly aheadMs: number;
};

/** One forecast service. */
export type Source = {
  readonly name: SourceName;
  /** Its name as people know it. */
  readonly label: string;
  /** The credit line its licence asks for. */
  readonly attribution: string;
  readonly attributionUrl: string;
  readonly covers: (place: Coordinates) => boolean;
  /** True where it hands on a model's own temperature, with no station's past errors taken out of it. */
  readonly isRawModel: (place: Coordinates) => boolean;
  /** What its answers are held against. */
  readonly habits: Habits;
  readonly request: (
    question: SourceQuestion,
    deps: WeatherDeps,
  ) => Promise<Result<SourceReply, SourceProblem>>;
};
