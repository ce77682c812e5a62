import { fail, ok, type Result } from '@/lib/result/result';
import { type Instant, instant } from '@/lib/time/instant';
import { issueProblem } from './checks/age';
import { checkAnswer } from './checks/check-answer';
import { completeHours } from './complete-hours';
import { type Copy, copyKey, freshUntil } from './copy';
import type { Site } from './place';
import type { SourceProblem } from './problem';
import type { Validity } from './request/attempt';
import type { ServiceAnswer } from './service-hour';
import type { Source } from './source';
import type { WeatherDeps } from './weather-deps';

/** A service's hours for a site: the copy at hand while it is fresh, or else a new answer, which becomes the copy. */
export async function askSource(
  source: Source,
  { site, deadline }: { readonly site: Site; readonly deadline: AbortSignal },
  deps: WeatherDeps,
): Promise<Result<Copy, SourceProblem>> {
  const key = copyKey(source.name, site);
  const old = deps.memory.copies.get(key) ?? null;
  if (old !== null && deps.now() < old.freshUntil) return ok(old);
  const reply = await source.request({ site, lastModified: old?.lastModified ?? null, deadline }, deps);
  if (!reply.ok) return reply;
  const now = deps.now();
  const copy =
    reply.value.kind === 'answer'
      ? newCopy({ source, site, now, ...reply.value })
      : renewed(old, reply.value.validity, now);
  if (copy.ok) deps.memory.copies.set(key, copy.value);
  return copy;
}

type Arrival = {
  readonly source: Source;
  readonly site: Site;
  readonly now: Instant;
  readonly answer: ServiceAnswer;
  readonly validity: Validity;
};

function newCopy({ source, site, now, answer: told, validity }: Arrival): Result<Copy, SourceProblem> {
  const { backMs, aheadMs, ...ways } = source.habits;
  const earliest = instant(now - backMs);
  const latest = instant(now + aheadMs);
  const checked = checkAnswer(told, { ...ways, site, now, earliest, latest });
  if (!checked.ok) return checked;
  const { answer, leftOut } = checked.value;
  const elevation = site.elevation ?? answer.elevation;
  const hours = completeHours(answer, elevation);
  if (!hours.ok) return hours;
  return ok({
    ...hours.value,
    leftOut,
    by: source.name,
    elevation,
    elevationFrom: site.elevation === null ? 'service' : 'given',
    // A service that was told the elevation repeats it: the height of its own terrain stays unknown.
    modelElevation: answer.elevation === site.elevation ? null : answer.elevation,
    issuedAt: answer.issuedAt,
    fetchedAt: now,
    freshUntil: freshUntil(now, validity.expires),
    lastModified: validity.lastModified,
  });
}

/** The service says its old answer still holds. */
function renewed(old: Copy | null, validity: Validity, now: Instant): Result<Copy, SourceProblem> {
  if (old === null) return fail({ code: 'bad-status', status: 304 });
  // "Not modified" for days is an old forecast.
  const aged = issueProblem(old.issuedAt, now);
  if (aged !== null) return fail({ code: aged });
  return ok({
    ...old,
    fetchedAt: now,
    freshUntil: freshUntil(now, validity.expires),
    lastModified: validity.lastModified ?? old.lastModified,
  });
}
