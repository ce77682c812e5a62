import type { Contradiction } from '@/lib/contract/contradiction';
import type { SourceName } from '@/lib/contract/source-name';
import type { Instant } from '@/lib/time/instant';

/** Why one request to one service gave nothing. */
export type FetchProblem =
  | { readonly code: 'timeout' }
  | { readonly code: 'unreachable' }
  | { readonly code: 'redirected' }
  | { readonly code: 'too-large' }
  | { readonly code: 'not-json' }
  | { readonly code: 'bad-status'; readonly status: number }
  /** The service asked to be left alone until then. */
  | { readonly code: 'rate-limited'; readonly until: Instant }
  /** It failed several times in a row and is not asked until then. */
  | { readonly code: 'resting'; readonly until: Instant }
  /** Too many requests of our own are waiting for it. */
  | { readonly code: 'busy' };

/** Why an answer cannot be used. */
export type AnswerProblem =
  | { readonly code: 'unexpected-shape'; readonly field: string }
  | { readonly code: 'wrong-units'; readonly field: string; readonly unit: string }
  | { readonly code: 'implausible'; readonly field: string; readonly value: number }
  | { readonly code: 'no-pressure' }
  | { readonly code: 'no-hours' }
  | { readonly code: Contradiction };

/** Why a service was not asked, or has nothing to say. */
export type SkipProblem =
  | { readonly code: 'outside-area' }
  /** The service wants to know whom to write to, and no contact is set. */
  | { readonly code: 'no-contact' }
  /** The address set for it is not a web address. */
  | { readonly code: 'bad-address' }
  /** Others were faster. */
  | { readonly code: 'slow' };

export type SourceProblem = FetchProblem | AnswerProblem | SkipProblem;

/** A service that was asked and did not give what was used, and why. */
export type SourceTry = { readonly source: SourceName; readonly problem: SourceProblem };

/** Why there can be no weather for what was asked. */
export type SiteProblem =
  | { readonly code: 'not-a-place'; readonly latitude: number; readonly longitude: number }
  | { readonly code: 'elevation-out-of-range'; readonly elevation: number };

/** Why there is no forecast. Sentences for these live in lib/words. */
export type WeatherProblem =
  | SiteProblem
  | {
      readonly code: 'all-sources-failed';
      readonly tries: readonly SourceTry[];
      readonly retryAfterSeconds: number;
    }
  /** The asked hours lie outside what the service gives. */
  | { readonly code: 'outside-forecast'; readonly hoursStart: Instant; readonly hoursEnd: Instant };

/** Why a question about a place or about past weather has no answer. */
export type LookupProblem =
  | SiteProblem
  | { readonly code: 'name-too-short' }
  /** No station near is known to any service that is asked. */
  | { readonly code: 'no-stations-here' }
  /** Not past yet, or before the archive begins. */
  | { readonly code: 'not-in-archive'; readonly at: Instant }
  | { readonly code: 'lookup-failed'; readonly problem: SourceProblem; readonly retryAfterSeconds: number };
