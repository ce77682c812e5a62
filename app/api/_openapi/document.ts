import { VERSION } from '@/lib/contract/version';
import { boardPaths } from './boards';
import { AIR_EXAMPLE, PLAN_EXAMPLE } from './examples';
import { LIVE_PARAMETERS, LIVE_TEXTS, type LiveText } from './live-texts';
import { LOOKUPS, type Lookup } from './lookups';
import { componentSchemas, type SchemaName, schemaAddress } from './schemas';

const json = (schema: object, more: object = {}): object => ({ 'application/json': { schema, ...more } });
const ref = (name: SchemaName): object => ({ $ref: schemaAddress(name) });

/** Refusals that say when to come back. */
const WAITED_OUT: readonly number[] = [429, 503];
const RETRY_AFTER = {
  'retry-after': { description: 'Seconds to wait.', schema: { type: 'integer', minimum: 1 } },
};

/** What an address may refuse with; any that counts requests may ask to wait, and any may break. */
function refusals(...statuses: readonly (keyof typeof REFUSALS)[]): Record<string, object> {
  const content = { 'application/problem+json': { schema: ref('Problem') } };
  return Object.fromEntries(
    [...statuses, 429 as const, 500 as const].map((status) => [
      status,
      {
        description: REFUSALS[status],
        ...(WAITED_OUT.includes(status) ? { headers: RETRY_AFTER } : {}),
        content,
      },
    ]),
  );
}

const REFUSALS = {
  400: 'What was sent cannot be read, or fields are missing, unknown or out of range; each is named.',
  413: 'The body is too large; it is refused while it arrives.',
  414: 'The address is longer than a server takes.',
  415: 'The body is not sent as application/json.',
  422: 'Every field can be read, but together they make no sense; each reason is named.',
  429: 'Too many requests at once; retry-after says how many seconds to wait.',
  500: 'Something broke here, not in what was sent.',
  503: 'No weather service answers; retry-after says when to come back.',
} as const;

type Post = {
  /** What a client made from this document calls it. */
  readonly operationId: string;
  readonly summary: string;
  readonly description: string;
  readonly body: SchemaName;
  readonly example: unknown;
  /** Whether it may ask weather services, and so find none that answers. */
  readonly asksWeather: boolean;
};

function post(
  { operationId, summary, description, body, example, asksWeather }: Post,
  answer: object,
): object {
  return {
    post: {
      operationId,
      summary,
      description,
      requestBody: { required: true, content: json(ref(body), { example }) },
      responses: {
        200: { description: 'The answer.', content: json(answer) },
        ...refusals(400, 413, 415, 422, ...(asksWeather ? ([503] as const) : [])),
      },
    },
  };
}

const AIR: Post = {
  operationId: 'getAir',
  summary: 'Density of moist air',
  description:
    'Up to 100,000 states, answered in the same order. Give one pressure by its kind (station, altimeter setting, sea level, or the elevation alone for the standard atmosphere) and one humidity. At most 8 MB.',
  body: 'AirRequest',
  asksWeather: false,
  example: AIR_EXAMPLE,
};

const PLAN: Post = {
  operationId: 'makePlan',
  summary: 'Which jets, when',
  description:
    'The plan for one machine, or with "machines" for up to 100 of them at one event: the call in words, the hours, the swaps with their windows, and what was not certain. Send hours, or a place to have a forecast fetched. At most 1 MB.',
  body: 'PlanRequest',
  asksWeather: true,
  example: PLAN_EXAMPLE,
};

function get(operationId: string, summary: string, description: string, content: object): object {
  return { get: { operationId, summary, responses: { 200: { description, content } } } };
}

function lookup({ operationId, summary, description, answers, parameters }: Lookup): object {
  const schema = answers.length > 1 ? { anyOf: answers.map(ref) } : ref(answers[0] ?? 'Problem');
  const responses = {
    200: { description: 'The answer.', content: json(schema) },
    ...refusals(400, 422, 503),
  };
  return { get: { operationId, summary, description, parameters, responses } };
}

function liveText({ operationId, summary, description, type }: LiveText): object {
  const responses = {
    200: { description: 'The answer, with an ETag.', content: { [type]: { schema: { type: 'string' } } } },
    304: { description: 'Nothing changed since the answer with the ETag that was sent along.' },
    ...refusals(400, 414, 422, 503),
  };
  return { get: { operationId, summary, description, parameters: LIVE_PARAMETERS, responses } };
}

const READY = {
  get: {
    operationId: 'getReady',
    summary: 'Whether requests may be sent to this server, and what it runs',
    responses: {
      200: { description: 'They may.', content: json(ref('Ready')) },
      503: { description: 'Not now; the check that does not hold is false.', content: json(ref('Ready')) },
    },
  },
};

const ADDRESSES = {
  get: {
    operationId: 'getAddresses',
    summary: 'Where phones on the network find this server; told only to the computer it runs on',
    responses: {
      200: {
        description: 'None where it listens to its own computer alone.',
        content: json(ref('Addresses')),
      },
      ...refusals(),
      403: {
        description: 'Somebody else asks.',
        content: { 'application/problem+json': { schema: ref('Problem') } },
      },
    },
  },
};

/** This service as an OpenAPI 3.1 document; the schemas are the ones that judge what is sent. */
export function openApiDocument(): object {
  return {
    openapi: '3.1.0',
    info: {
      title: 'Heavy Air',
      version: VERSION,
      description:
        "Jetting plans for carburetted two-strokes. Arithmetic on a forecast: the maker's manual and the rules of the event come first.",
    },
    servers: [{ url: '/' }],
    paths: {
      '/api': { ...get('getDocument', 'This document', 'OpenAPI 3.1.', json({ type: 'object' })) },
      '/api/health': { ...get('getHealth', 'Whether the service runs', 'It runs.', json(ref('Health'))) },
      '/api/ready': READY,
      '/api/addresses': ADDRESSES,
      '/api/air': post(AIR, ref('Airs')),
      '/api/plan': post(PLAN, { anyOf: [ref('Plan'), ref('Plans')] }),
      ...boardPaths(),
      ...Object.fromEntries(Object.entries(LOOKUPS).map(([path, asked]) => [path, lookup(asked)])),
      ...Object.fromEntries(Object.entries(LIVE_TEXTS).map(([path, text]) => [path, liveText(text)])),
    },
    components: {
      schemas: componentSchemas(),
      securitySchemes: { boardSecret: { type: 'http', scheme: 'bearer' } },
    },
  };
}
