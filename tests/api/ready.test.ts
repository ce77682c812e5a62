import { expect, test } from 'vitest';
import { outcomes } from '@/app/api/ready/checks';
import { GET, POST } from '@/app/api/ready/route';
import { version } from '@/package.json';
import { problemOf } from './ask';

test('a server is ready when every check holds; one that throws does not', async () => {
  const checks = {
    here: () => true,
    there: async () => false,
    broken: () => Promise.reject(new Error('no database')),
  };
  expect(await outcomes(checks)).toEqual({ here: true, there: false, broken: false });
});

test('tells its version, and is not kept', async () => {
  const answer = await GET();
  expect([answer.status, answer.headers.get('cache-control')]).toEqual([200, 'no-store']);
  expect(await answer.json()).toMatchObject({ ready: true, version });
});

test('takes nothing else', async () => {
  expect((await problemOf(POST())).status).toBe(405);
});
