import { fail, ok, type Result } from '@/lib/result/result';
import type { Host } from '@/lib/weather/environment';
import type { SourceProblem } from '@/lib/weather/problem';
import { address } from '@/lib/weather/request/address';
import { ask } from '@/lib/weather/request/ask';
import type { Answer } from '@/lib/weather/request/attempt';
import type { WeatherDeps } from '@/lib/weather/weather-deps';

export type OpenMeteoQuestion = {
  readonly host: Host;
  readonly path: string;
  readonly parameters: Readonly<Record<string, string>>;
};

/** The address of a question, with the key of a paid plan. */
export function openMeteoUrl(
  { host, path, parameters }: OpenMeteoQuestion,
  deps: WeatherDeps,
): Result<string, SourceProblem> {
  const { baseUrls, openMeteoKey } = deps.settings();
  const base = baseUrls[host];
  if (base === null) return fail({ code: 'bad-address' });
  const key: Readonly<Record<string, string>> = openMeteoKey === null ? {} : { apikey: openMeteoKey };
  return ok(address(base, path, { ...parameters, ...key }));
}

/** The JSON of an answer. Nothing was asked conditionally, so a 304 is nonsense. */
export function unread(answer: Result<Answer, SourceProblem>): Result<unknown, SourceProblem> {
  if (!answer.ok) return answer;
  return answer.value.kind === 'body' ? ok(answer.value.json) : fail({ code: 'bad-status', status: 304 });
}

/** Asks one of Open-Meteo's hosts and hands back the JSON, unread. */
export async function askOpenMeteo(
  question: OpenMeteoQuestion,
  deadline: AbortSignal,
  deps: WeatherDeps,
): Promise<Result<unknown, SourceProblem>> {
  const url = openMeteoUrl(question, deps);
  return url.ok ? unread(await ask({ host: question.host, url: url.value, deadline }, deps)) : url;
}
