import type { SourceName } from '@/lib/contract/source-name';
import type { Result } from '@/lib/result/result';
import type { Copy } from './copy';
import type { SourceProblem, SourceTry } from './problem';

export type Entrant = {
  readonly name: SourceName;
  readonly ask: () => Promise<Result<Copy, SourceProblem>>;
};

export type RaceTimes = {
  /** A service silent for this long gets company. */
  readonly hedgeMs: number;
  /** The race ends then, whoever is still running. */
  readonly limitMs: number;
};

export type RaceResult = {
  /** The first complete answer. */
  readonly winner: Copy | null;
  /** The first answer without pressure, for want of a better one. */
  readonly withoutPressure: Copy | null;
  /** The services that were asked and did not win, and why. */
  readonly tries: readonly SourceTry[];
};

/**
 * Asks services in order: the next one as soon as one fails, or when one has been silent for a while. The first
 * complete answer wins. Slower ones are not stopped: their answer is kept for the next question.
 */
export function race(entrants: readonly Entrant[], { hedgeMs, limitMs }: RaceTimes): Promise<RaceResult> {
  return new Promise((resolve, reject) => {
    const outcomes = new Map<SourceName, Result<Copy, SourceProblem>>();
    let launched = 0;
    const finish = (winner: Copy | null): void => {
      clearTimeout(limit);
      clearTimeout(company);
      const asked = entrants.slice(0, launched);
      launched = entrants.length;
      resolve({
        winner,
        withoutPressure: firstWithoutPressure(asked, outcomes),
        tries: asked.flatMap(({ name }) => tryOf(name, outcomes.get(name), winner)),
      });
    };
    const launch = (): void => {
      clearTimeout(company);
      const entrant = entrants[launched];
      if (entrant === undefined) return;
      launched += 1;
      company = setTimeout(launch, hedgeMs);
      entrant
        .ask()
        .then((outcome) => {
          outcomes.set(entrant.name, outcome);
          if (outcome.ok && outcome.value.hasPressure) finish(outcome.value);
          else if (outcomes.size === entrants.length) finish(null);
          // Only the newest one's failure brings the next: an older one already has company.
          else if (entrants[launched - 1] === entrant) launch();
        })
        .catch(reject);
    };
    let company: ReturnType<typeof setTimeout> | undefined;
    const limit = setTimeout(() => finish(null), limitMs);
    if (entrants.length === 0) finish(null);
    else launch();
  });
}

function firstWithoutPressure(
  asked: readonly Entrant[],
  outcomes: ReadonlyMap<SourceName, Result<Copy, SourceProblem>>,
): Copy | null {
  for (const { name } of asked) {
    const outcome = outcomes.get(name);
    if (outcome?.ok === true && !outcome.value.hasPressure) return outcome.value;
  }
  return null;
}

function tryOf(
  source: SourceName,
  outcome: Result<Copy, SourceProblem> | undefined,
  winner: Copy | null,
): readonly SourceTry[] {
  if (outcome === undefined) return [{ source, problem: { code: 'slow' } }];
  if (!outcome.ok) return [{ source, problem: outcome.reason }];
  return outcome.value === winner ? [] : [{ source, problem: { code: 'no-pressure' } }];
}
