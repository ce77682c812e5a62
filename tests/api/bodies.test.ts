import { describe, expect, test } from 'vitest';
import { askAir, askAirRaw, askPlan, askPlanRaw, problemOf } from './ask';

/** A body that comes in pieces and counts how many were taken. */
function stream(pieces: number, bytes: number, more: { readonly breaksOff?: boolean } = {}) {
  let taken = 0;
  const body = new ReadableStream<Uint8Array>({
    pull(controller) {
      if (taken >= pieces) return more.breaksOff ? controller.error(new Error('reset')) : controller.close();
      taken += 1;
      controller.enqueue(new Uint8Array(bytes).fill(0x20));
    },
  });
  return { body, taken: () => taken };
}

const JSON_TYPE = { 'content-type': 'application/json' };

describe('A body', () => {
  test.each([
    ['POST /api/plan', askPlanRaw, 1],
    ['POST /api/air', askAirRaw, 8],
  ] as const)('of 10 MB is refused by %s while it arrives', async (_, ask, limitMb) => {
    const { body, taken } = stream(10, 1_000_000);
    const problem = await problemOf(await ask(body));
    expect([problem.status, problem.title]).toEqual([413, 'Content Too Large']);
    // One piece over the limit, and one that the stream has waiting.
    expect(taken()).toBeLessThanOrEqual(limitMb + 2);
  });

  test('that announces 10 MB is refused before it arrives', async () => {
    const { body, taken } = stream(10, 1_000_000);
    const response = await askPlanRaw(body, { ...JSON_TYPE, 'content-length': '10000000' });
    expect((await problemOf(response)).status).toBe(413);
    expect(taken()).toBeLessThanOrEqual(1);
  });

  test('that breaks off is told to be sent again', async () => {
    const problem = await problemOf(await askPlanRaw(stream(2, 1000, { breaksOff: true }).body));
    expect([problem.status, problem.detail]).toEqual([
      400,
      'The body broke off before it was complete. Send it again.',
    ]);
  });

  test.each([
    ['nothing', ''],
    ['half an object', '{"machine":'],
    ['NaN', '{"states":[{"temperatureC":NaN}]}'],
    ['a web page', '<!doctype html><p>Hello'],
    ['bytes that are no UTF-8', new Uint8Array([0x7b, 0xff, 0xfe, 0x7d])],
  ])('with %s is no JSON', async (_, body) => {
    for (const ask of [askAirRaw, askPlanRaw]) {
      const problem = await problemOf(await ask(body));
      expect([problem.status, problem.title]).toEqual([400, 'Bad Request']);
      expect(problem.detail).toMatch(/^The body is (empty|not JSON)/);
    }
  });

  test.each(['null', '[]', '"plan"', '7', 'true', '{}'])('with %s is JSON, but no request', async (body) => {
    for (const ask of [askAirRaw, askPlanRaw]) {
      const problem = await problemOf(await ask(body));
      expect(problem.status).toBe(400);
      expect(problem.errors?.length).toBeGreaterThan(0);
    }
  });

  test('with a number no computer can hold is refused at its field', async () => {
    const problem = await problemOf(await askAirRaw('{"states":[{"temperatureC":1e309,"pressureHpa":990}]}'));
    expect(problem.errors).toEqual([
      {
        path: 'states[0].temperatureC',
        pointer: '#/states/0/temperatureC',
        code: 'field',
        detail: 'expected a number, got a number too large to hold',
      },
    ]);
  });

  test('nested a hundred thousand deep is refused like any other', async () => {
    const deep = `${'['.repeat(100_000)}${']'.repeat(100_000)}`;
    for (const body of [deep, `{"machine":${deep}}`, `{"machine":{"jetMarking":${deep}}}`])
      expect((await problemOf(await askPlanRaw(body))).status).toBe(400);
  });

  test('with ten thousand unknown fields is refused in few words', async () => {
    const fields = Array.from({ length: 10_000 }, (_, i) => `"field${i}":1`).join();
    const problem = await problemOf(await askPlanRaw(`{${fields}}`));
    expect(JSON.stringify(problem).length).toBeLessThan(2000);
  });

  test.each(['text/plain', 'multipart/form-data; boundary=x', 'application/jsonp', ''])(
    'sent as %j is not taken for JSON',
    async (type) => {
      const problem = await problemOf(
        await askPlanRaw(new TextEncoder().encode('{}'), { 'content-type': type }),
      );
      expect([problem.status, problem.title]).toEqual([415, 'Unsupported Media Type']);
    },
  );

  test.each(['application/json; charset=utf-8', 'Application/JSON', 'application/geo+json'])(
    'sent as %j is',
    async (type) => {
      expect((await problemOf(await askPlanRaw('{}', { 'content-type': type }))).status).toBe(400);
    },
  );
});

describe('A body that lacks something', () => {
  const paths = async (answer: Promise<Response>) =>
    ((await problemOf(await answer)).errors ?? []).map(({ path }) => path);

  test.each([
    ['nothing at all', {}, ['event', 'hours', 'machine']],
    ['hours only', { hours: [] }, ['event', 'machine']],
    [
      'an empty machine',
      { machine: {}, place: { latitude: 1, longitude: 2 } },
      ['machine.name', 'machine.carburettors', 'machine.box', 'machine.baseline', 'event'],
    ],
    [
      'fields of the wrong kind',
      { event: 'tonight', machine: 4, machines: 5, hours: 6, place: 7 },
      ['machine', 'machines', 'event', 'hours', 'place', 'place', 'machines'],
    ],
    [
      'an hour with two pressures and no time',
      { hours: [{ pressureHpa: 990, seaLevelHpa: 1010 }] },
      ['event', 'hours[0].time', 'hours[0].temperatureC', 'hours[0].pressureHpa', 'machine'],
    ],
  ])('names all of it at once: %s', async (_, body, expected) => {
    expect((await paths(askPlan(body))).sort()).toEqual([...expected].sort());
  });

  test('names all that a state of air lacks', async () => {
    expect(await paths(askAir({ states: [{}, { temperatureC: 1, altimeterHpa: 1013 }] }))).toEqual([
      'states[0].temperatureC',
      'states[0].pressureHpa',
      'states[1].elevationM',
    ]);
  });
});
