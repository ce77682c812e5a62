import { type SchemaName, schemaAddress } from './schemas';

const ref = (name: SchemaName): object => ({ $ref: schemaAddress(name) });
const json = (name: SchemaName): object => ({ 'application/json': { schema: ref(name) } });
const problem = (description: string): object => ({
  description,
  content: { 'application/problem+json': { schema: ref('Problem') } },
});

const REFUSALS = {
  400: 'What was sent cannot be read, or fields are missing, unknown or out of range; each is named.',
  401: 'No secret was sent.',
  403: "It takes the keeper's secret.",
  404: 'There is no such board, or this is not its secret.',
  412: 'The board was changed since the revision that if-match names.',
  413: 'The body is too large; it is refused while it arrives.',
  415: 'The body is not sent as application/json.',
  422: 'Every field can be read, but together they make no sense; each reason is named.',
  428: 'if-match is missing.',
  429: 'Too much at once, or too many wrong secrets; retry-after says when to come back.',
} as const;

type Status = keyof typeof REFUSALS;
const refusals = (...statuses: readonly Status[]): object =>
  Object.fromEntries(statuses.map((status) => [status, problem(REFUSALS[status])]));
const body = (name: SchemaName): object => ({ requestBody: { required: true, content: json(name) } });

const SECRET = { security: [{ boardSecret: [] }] };
const ID = {
  name: 'id',
  in: 'path',
  required: true,
  schema: { type: 'string' },
  description: 'Of the board.',
};
const header = (name: string, description: string): object => ({
  name,
  in: 'header',
  required: name === 'if-match',
  schema: { type: 'string' },
  description,
});
const board = (description: string): object => ({ description, content: json('Board') });
const done = { description: 'Done.' };

/** The addresses of boards: nights a server plans again by itself, and tells phones of. */
export function boardPaths(): Readonly<Record<string, object>> {
  return {
    '/api/boards': {
      post: {
        operationId: 'postBoard',
        summary: 'Post a night to a board',
        description:
          'The server plans it again by itself and tells its followers once when a next job changes, when its time comes and when the forecast is old. Up to 100 machines, at most 1 MB. Gone 48 hours after the last run.',
        ...body('BoardPost'),
        responses: {
          201: {
            description: 'Its two secrets, which are shown this once.',
            content: json('BoardPosted'),
          },
          ...refusals(400, 413, 415, 422, 429),
        },
      },
    },
    ...oneBoard(),
    ...onceInside(),
  };
}

function oneBoard(): Readonly<Record<string, object>> {
  return {
    '/api/boards/{id}': {
      get: {
        operationId: 'getBoard',
        summary: 'A board as it stands',
        description: 'With either secret. Ask again with if-none-match.',
        ...SECRET,
        parameters: [ID, header('if-none-match', 'ETag of the answer one has.')],
        responses: {
          200: board('The board, with an ETag.'),
          304: { description: 'Nothing changed since the answer with that ETag.' },
          ...refusals(401, 404, 429),
        },
      },
      patch: {
        operationId: 'changeBoard',
        summary: 'Change a board',
        description: "Whole fields that take the place of those posted. Takes the keeper's secret.",
        ...SECRET,
        parameters: [ID, header('if-match', 'ETag of the board that is changed.')],
        ...body('BoardPatch'),
        responses: {
          200: board('The board, planned again.'),
          ...refusals(400, 401, 403, 404, 412, 413, 415, 422, 428, 429),
        },
      },
      delete: {
        operationId: 'deleteBoard',
        parameters: [ID],
        summary: 'Take a board down',
        description: "Everything of it is gone at once. Takes the keeper's secret.",
        ...SECRET,
        responses: { 204: done, ...refusals(401, 403, 404, 429) },
      },
    },
  };
}

function onceInside(): Readonly<Record<string, object>> {
  return {
    '/api/boards/{id}/done': {
      post: {
        operationId: 'tellDone',
        parameters: [ID],
        summary: 'It is in',
        description: 'What is in the engine of a machine now. With either secret.',
        ...SECRET,
        ...body('BoardDone'),
        responses: {
          200: board('The board, planned again.'),
          ...refusals(400, 401, 404, 413, 415, 422, 429),
        },
      },
    },
    '/api/boards/{id}/subscriptions': {
      put: {
        operationId: 'followBoard',
        parameters: [ID],
        summary: 'Follow machines by Web Push',
        description:
          "A PushSubscription's JSON, the machines it is for and the clock its messages are written on; again to change them.",
        ...SECRET,
        ...body('BoardSubscription'),
        responses: { 204: done, ...refusals(400, 401, 404, 413, 415, 422, 429) },
      },
      delete: {
        operationId: 'unfollowBoard',
        parameters: [ID],
        summary: 'Follow no more',
        description: 'By the address of the subscription.',
        ...SECRET,
        ...body('BoardUnsubscribe'),
        responses: { 204: done, ...refusals(400, 401, 404, 413, 415, 429) },
      },
    },
  };
}
