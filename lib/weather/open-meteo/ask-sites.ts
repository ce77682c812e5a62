import { fail, ok, type Result } from '@/lib/result/result';
import type { Site } from '@/lib/weather/place';
import type { SourceProblem } from '@/lib/weather/problem';
import { coordinate } from '@/lib/weather/request/address';
import { type Ask, askNow, inTurn, isAboutTheQuestion, restOf } from '@/lib/weather/request/ask';
import type { WeatherDeps } from '@/lib/weather/weather-deps';
import { type OpenMeteoQuestion, openMeteoUrl, unread } from './ask-open-meteo';

/** Whose turn it is when many callers' places go in one request: a line of its own, beside those of the callers. */
const TOGETHER = 'together';

/**
 * Asks for one site. While other requests are under way sites gather, and go together as soon as there is room: the
 * service takes lists of coordinates and answers with a list.
 */
export async function askForSite(
  site: Site,
  question: OpenMeteoQuestion,
  deadline: AbortSignal,
  deps: WeatherDeps,
): Promise<Result<unknown, SourceProblem>> {
  const rest = restOf(question.host, deps);
  if (rest !== null) return fail(rest);
  // Heights go along for all places of a request or for none.
  const height = site.elevation === null ? 'own height' : 'height given';
  const group = [question.host, question.path, height, ...Object.values(question.parameters)].join(' ');
  return deps.memory.siteBatches.ask(site, {
    group,
    caller: deps.caller,
    deadline,
    send: (take) => sendTogether(question, take, deps),
  });
}

async function sendTogether(
  question: OpenMeteoQuestion,
  take: () => readonly Site[],
  deps: WeatherDeps,
): Promise<Result<readonly Result<unknown, SourceProblem>[], SourceProblem>> {
  // Its own: those who asked may have left by the time the answer is there.
  const over = new AbortController();
  const timer = setTimeout(() => over.abort(), deps.timings.totalMs);
  const turn = { host: question.host, deadline: over.signal };
  const job = async (): Promise<Result<readonly Result<unknown, SourceProblem>[], never>> =>
    ok(await askSites(take(), question, over.signal, deps));
  return inTurn(turn, job, { ...deps, caller: TOGETHER }).finally(() => clearTimeout(timer));
}

async function askSites(
  sites: readonly Site[],
  question: OpenMeteoQuestion,
  deadline: AbortSignal,
  deps: WeatherDeps,
): Promise<readonly Result<unknown, SourceProblem>[]> {
  if (sites.length === 0) return [];
  const url = openMeteoUrl({ ...question, parameters: { ...points(sites), ...question.parameters } }, deps);
  if (!url.ok) return sites.map(() => url);
  const asked: Ask = { host: question.host, url: url.value, deadline };
  const answer = unread(await askNow(asked, deps));
  if (sites.length === 1) return [answer];
  if (answer.ok && Array.isArray(answer.value) && answer.value.length === sites.length)
    return answer.value.map((one: unknown) => ok(one));
  if (!answer.ok && !isAboutTheQuestion(answer.reason)) return sites.map(() => answer);
  // One place among them is not to the service's liking, or it takes no lists: in halves, the others get their answer.
  const half = Math.ceil(sites.length / 2);
  const first = await askSites(sites.slice(0, half), question, deadline, deps);
  return [...first, ...(await askSites(sites.slice(half), question, deadline, deps))];
}

/** Coordinates, and heights where they are given, as lists. */
export function points(sites: readonly Site[]): Readonly<Record<string, string>> {
  const place = {
    latitude: sites.map(({ latitude }) => coordinate(latitude)).join(','),
    longitude: sites.map(({ longitude }) => coordinate(longitude)).join(','),
  };
  const heights = sites.map(({ elevation }) => elevation).filter((elevation) => elevation !== null);
  // Never NaN: the service then answers with a sea-level pressure (open-meteo issues #1155, #1708).
  return heights.length === sites.length ? { ...place, elevation: heights.join(',') } : place;
}
