import type * as z from 'zod/mini';
import { POST as postAir } from '@/app/api/air/route';
import { POST as postPlan } from '@/app/api/plan/route';

import type { planRequestSchema } from '@/lib/contract/plan-request';

export type PlanBody = z.input<typeof planRequestSchema>;

const request = (body: BodyInit | null, headers: Record<string, string>) =>
  // Streams need half duplex to be sent (fetch standard); the type of RequestInit does not know it yet.
  new Request('http://localhost/', { method: 'POST', body, headers, duplex: 'half' } as RequestInit);

const JSON_TYPE = { 'content-type': 'application/json' };

export const askAir = (body: unknown) => postAir(request(JSON.stringify(body), JSON_TYPE));
export const askPlan = (body: unknown) => postPlan(request(JSON.stringify(body), JSON_TYPE));
export const askPlanRaw = (body: BodyInit | null, headers: Record<string, string> = JSON_TYPE) =>
  postPlan(request(body, headers));
export const askAirRaw = (body: BodyInit | null, headers: Record<string, string> = JSON_TYPE) =>
  postAir(request(body, headers));

export type ProblemBody = {
  readonly type: string;
  readonly title: string;
  readonly status: number;
  readonly detail: string;
  readonly errors?: readonly {
    readonly path: string;
    readonly pointer: string;
    readonly code: string;
    readonly detail: string;
  }[];
};

/** Text that would show the inside of the program: a stack trace, a path of a file, the name of an error class. */
const INSIDE = /\bat \S+ \(|node_modules|\.ts:\d|TypeError|RangeError|SyntaxError|ZodError|undefined/;

/** A refusal, proven to be one by RFC 9457 and to show nothing of the inside. */
export async function problemOf(response: Response): Promise<ProblemBody> {
  const text = await response.text();
  const type = response.headers.get('content-type');
  if (type !== 'application/problem+json')
    throw new Error(`expected a problem, got ${response.status} ${type}: ${text.slice(0, 300)}`);
  if (INSIDE.test(text)) throw new Error(`the inside shows: ${text}`);
  const body = JSON.parse(text) as ProblemBody;
  if (body.status !== response.status) throw new Error(`status ${response.status} says it is ${body.status}`);
  return body;
}

export async function answerOf<S extends z.ZodMiniType>(response: Response, schema: S): Promise<z.output<S>> {
  const body: unknown = await response.json();
  if (response.status !== 200)
    throw new Error(`expected an answer, got ${response.status}: ${JSON.stringify(body)}`);
  return schema.parse(body);
}
