import { readdirSync, readFileSync } from 'node:fs';
import { Validator } from '@seriousme/openapi-schema-validator';
import { describe, expect, test } from 'vitest';
import { AIR_EXAMPLE } from '@/app/api/_openapi/examples';
import { GET as getHealth, POST as postHealth } from '@/app/api/health/route';
import { GET } from '@/app/api/route';
import { airRequestSchema } from '@/lib/contract/air-request';
import { version } from '@/package.json';
import { problemOf } from './ask';

const document = async () => JSON.parse(await (await GET()).text());

describe('GET /api', () => {
  test('is a valid OpenAPI 3.1 document', async () => {
    const { valid, errors } = await new Validator().validate(await document());
    expect(errors ?? []).toEqual([]);
    expect(valid).toBe(true);
  });

  test('tells the version of package.json', async () => {
    expect((await document()).info.version).toBe(version);
  });

  test('would not be called valid with a hole in it', async () => {
    const holed = await document();
    delete holed.paths['/api/plan'].post.responses;
    holed.paths['/api/air'].post.requestBody = { content: 3 };
    expect((await new Validator().validate(holed)).valid).toBe(false);
  });

  test('refers only to schemas it holds', async () => {
    const text = JSON.stringify(await document());
    const held = Object.keys((await document()).components.schemas);
    const named = [...text.matchAll(/"\$ref":"([^"]+)"/g)].map(([, address]) =>
      address?.replace('#/components/schemas/', ''),
    );
    expect(named.length).toBeGreaterThan(10);
    expect(named.filter((name) => !held.includes(name ?? ''))).toEqual([]);
  });

  test('knows every route there is, and no other', async () => {
    const routes = readdirSync('app/api', { recursive: true, encoding: 'utf8' })
      // The one in brackets answers for every address that is none.
      .filter((file) => file.endsWith('route.ts') && !file.startsWith('['))
      .map((file) =>
        `/api/${file}`
          .replace(/\/route\.ts$/, '')
          .replaceAll('[', '{')
          .replaceAll(']', '}'),
      );
    expect(Object.keys((await document()).paths).sort()).toEqual(routes.sort());
  });

  test('names every operation, each differently', async () => {
    const { paths } = await document();
    const names = Object.values(paths).flatMap((operations) =>
      Object.values(operations as object).map(({ operationId }) => operationId),
    );
    expect(names.filter((name) => !/^[a-z]+[A-Z][A-Za-z]+$/.test(name))).toEqual([]);
    expect(new Set(names).size).toBe(names.length);
    expect(names.length).toBeGreaterThan(8);
  });

  test('lists being told to wait wherever requests are counted, and a body too large wherever one is sent', async () => {
    const { paths } = await document();
    // What answers without counting: the document itself and the sign of life.
    for (const [path, operations] of Object.entries<
      Record<string, { responses: object; requestBody?: object }>
    >(paths)) {
      const file = `app${path.replaceAll('{', '[').replaceAll('}', ']')}/route.ts`;
      const counted = readFileSync(file, 'utf8').includes('handle(');
      for (const { responses, requestBody } of Object.values(operations)) {
        expect([path, '429' in responses]).toEqual([path, counted]);
        expect([path, '413' in responses]).toEqual([path, requestBody !== undefined]);
      }
    }
  });

  test('leaves no default in what is sent, which clients would take for a field to be sent', async () => {
    const { Machine, PlanRequest } = (await document()).components.schemas;
    expect(JSON.stringify([Machine, PlanRequest])).not.toContain('"default"');
    expect(PlanRequest.properties.readings.description).toMatch(/Left out, it is \[\]\.$/);
  });

  test('lets callers leave out what has a default, and answers with all of it', async () => {
    const { Machine, Plan } = (await document()).components.schemas;
    expect(Machine.required).toEqual(['name', 'carburettors', 'box', 'baseline']);
    expect(Plan.required).toContain('warnings');
  });

  test('carries examples that its own schemas accept', () => {
    expect(airRequestSchema.safeParse(AIR_EXAMPLE).error).toBeUndefined();
  });
});

describe('GET /api/health', () => {
  test('says that the service runs', async () => {
    const response = await getHealth();
    expect([response.status, await response.json()]).toEqual([200, { status: 'ok' }]);
    expect(response.headers.get('cache-control')).toBe('no-store');
  });

  test('takes nothing else', async () => {
    expect((await problemOf(postHealth())).status).toBe(405);
  });
});
