import { describe, expect, it } from 'vitest';
import { clientOf, EVERYONE } from '@/app/api/_http/client-of';
import { createRateLimit } from '@/app/api/_http/rate-limit';
import { createTokenBuckets } from '@/app/api/_http/token-bucket';
import { withMadeMaps } from '@/tests/support/made-maps';

const asked = (forwarded?: string) =>
  new Request(
    'http://localhost/api/plan',
    forwarded === undefined ? {} : { headers: { 'x-forwarded-for': forwarded } },
  );

/** How many of a thousand requests at one moment are let through. */
function passed(environment: Record<string, string>, forwarded: (i: number) => string | undefined): number {
  const limit = createRateLimit(environment);
  return Array.from({ length: 1000 }, (_, i) => limit(asked(forwarded(i)), 0)).filter((wait) => wait === null)
    .length;
}

describe('the limit on requests', () => {
  it('lets a burst through, then tells the seconds to wait', () => {
    const buckets = createTokenBuckets({ burst: 3, perSecond: 0.5 });
    expect([0, 0, 0, 0].map((at) => buckets.take('a', at))).toEqual([null, null, null, 2]);
    expect(buckets.take('a', 1_000)).toBe(1);
    expect(buckets.take('a', 2_000)).toBeNull();
    expect(buckets.take('b', 2_000)).toBeNull();
  });

  it('forgets who was silent until all was earned back, and nobody before, however many come', () => {
    const { made: buckets, maps } = withMadeMaps(() => createTokenBuckets({ burst: 3, perSecond: 0.5 }));
    const [remembered] = maps;
    for (let i = 0; i < 5000; i += 1) buckets.take(`once-${i}`, i);
    expect(remembered?.size).toBe(5000);
    // All earned back after six seconds: those of the first millisecond are forgotten, not those after them.
    for (const at of [0, 1, 2]) expect(buckets.take('steady', 5998 + at)).toBeNull();
    expect(remembered?.has('once-0')).toBe(false);
    expect(remembered?.has('once-1')).toBe(true);
    expect(buckets.take('steady', 6001)).toBe(2);
    buckets.take('last', 20_000);
    expect([...(remembered ?? [])].map(([client]) => client)).toEqual(['last']);
  });

  it('is not widened by a forged forwarding header where no proxy is trusted', () => {
    const environment = { REQUESTS_PER_MINUTE: '60' };
    const honest = passed(environment, () => undefined);
    expect(honest).toBe(40);
    expect(passed(environment, (i) => `10.0.${i >> 8}.${i & 255}`)).toBe(honest);
  });

  it('is not widened by addresses written left of what the trusted proxy saw', () => {
    const environment = { REQUESTS_PER_MINUTE: '60', TRUSTED_PROXIES: '1' };
    expect(passed(environment, (i) => `10.0.${i >> 8}.${i & 255}, 192.0.2.7`)).toBe(40);
  });

  it('counts callers apart behind a trusted proxy, and together where the header is missing', () => {
    expect(passed({ REQUESTS_PER_MINUTE: '60', TRUSTED_PROXIES: '1' }, (i) => `192.0.2.${i % 2}`)).toBe(80);
    expect(clientOf(new Headers(), 1)).toBe(EVERYONE);
    expect(clientOf(new Headers({ 'x-forwarded-for': '192.0.2.1' }), 2)).toBe(EVERYONE);
  });

  it('takes its default where the setting is no number, and is off at 0', () => {
    expect(passed({ REQUESTS_PER_MINUTE: 'many' }, () => undefined)).toBe(1000);
    expect(passed({ REQUESTS_PER_MINUTE: '-1' }, () => undefined)).toBe(1000);
    expect(passed({ REQUESTS_PER_MINUTE: '0' }, () => undefined)).toBe(1000);
    const limit = createRateLimit({});
    const waits = Array.from({ length: 2001 }, () => limit(asked(), 0));
    expect(waits.filter((wait) => wait === null).length).toBe(2000);
  });
});
