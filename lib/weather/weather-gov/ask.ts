import { fail, ok, type Result } from '@/lib/result/result';
import type { SourceProblem } from '@/lib/weather/problem';
import { address } from '@/lib/weather/request/address';
import { ask } from '@/lib/weather/request/ask';
import type { Answer } from '@/lib/weather/request/attempt';
import { userAgent } from '@/lib/weather/request/user-agent';
import type { WeatherDeps } from '@/lib/weather/weather-deps';

/** One question to the service. The path is made from checked parts; no address that an answer carries is followed. */
export async function askWeatherGov(
  path: string,
  deadline: AbortSignal,
  deps: WeatherDeps,
): Promise<Result<unknown, SourceProblem>> {
  const { baseUrls, contact } = deps.settings();
  if (baseUrls.weatherGov === null) return fail({ code: 'bad-address' });
  // Unknown query parameters are answered with 400, so there are none.
  const url = address(baseUrls.weatherGov, path);
  const headers = { 'user-agent': userAgent(contact), accept: 'application/geo+json' };
  const reply: Result<Answer, SourceProblem> = await ask(
    { host: 'weatherGov', url, headers, deadline },
    deps,
  );
  if (!reply.ok) return reply;
  return reply.value.kind === 'body' ? ok(reply.value.json) : fail({ code: 'bad-status', status: 304 });
}

export function isNotFound(problem: SourceProblem): boolean {
  return problem.code === 'bad-status' && problem.status === 404;
}
