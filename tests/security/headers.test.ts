import { NextRequest } from 'next/server';
import { describe, expect, it } from 'vitest';
import { pagePolicy } from '@/app/_headers/page-policy';
import nextConfig from '@/next.config';
import { config, proxy } from '@/proxy';

type Headers = Readonly<Record<string, string>>;

/** What the configuration sets for an address, later rules over earlier ones. */
async function configuredFor(path: string): Promise<Headers> {
  const rules = (await nextConfig.headers?.()) ?? [];
  const fitting = rules.filter(({ source }) => new RegExp(`^${source}$`).test(path));
  return Object.fromEntries(fitting.flatMap(({ headers }) => headers.map(({ key, value }) => [key, value])));
}

const directives = (policy: string): ReadonlyMap<string, string> =>
  new Map(
    policy.split('; ').map((part) => {
      const [name = '', ...values] = part.split(' ');
      return [name, values.join(' ')];
    }),
  );

const HASHES = { '/': ["'sha256-a='"], '/_not-found': ["'sha256-n='"] };
const BUILT = { hashes: HASHES, developing: false };
const PATHS = ['/', '/trail', '/open', '/no-such-page', '/api', '/api/plan.ics', '/_next/static/chunks/a.js'];

describe('the headers of every answer', () => {
  it.each(PATHS)('keep %s from being guessed at, framed, embedded and told about elsewhere', async (path) => {
    expect(await configuredFor(path)).toMatchObject({
      'x-content-type-options': 'nosniff',
      'x-frame-options': 'DENY',
      'referrer-policy': 'same-origin',
      'cross-origin-opener-policy': 'same-origin',
      'cross-origin-resource-policy': 'same-origin',
    });
  });

  it('let pages of ours ask for the place, and nobody for camera or microphone', async () => {
    const { 'permissions-policy': permissions = '' } = await configuredFor('/');
    const parts = permissions.split(', ');
    expect(parts).toContain('geolocation=(self)');
    expect(parts.filter((part) => !part.endsWith('=()'))).toEqual(['geolocation=(self)']);
    expect(parts).toEqual(expect.arrayContaining(['camera=()', 'microphone=()', 'payment=()']));
  });

  it('leave https to whoever runs the server: nothing built asks for it', async () => {
    for (const path of PATHS)
      expect(Object.keys(await configuredFor(path))).not.toContain('strict-transport-security');
  });

  it('name neither the framework nor its version', () => {
    expect(nextConfig.poweredByHeader).toBe(false);
  });

  it('let nothing in an answer of the API run or load when it is opened by itself', async () => {
    for (const path of ['/api', '/api/plan.csv', '/api/places']) {
      const policy = directives((await configuredFor(path))['content-security-policy'] ?? '');
      expect(policy.get('default-src')).toBe("'none'");
      expect(policy.get('frame-ancestors')).toBe("'none'");
      expect(policy.has('sandbox')).toBe(true);
    }
  });

  it('allow no strange origin, by a header of the API or of a page', async () => {
    for (const path of PATHS)
      expect(
        Object.keys(await configuredFor(path)).filter((name) => name.startsWith('access-control')),
      ).toEqual([]);
  });
});

describe('the policy of a page', () => {
  it('lets only its own files and its own hashed scripts run', () => {
    const policy = directives(pagePolicy('/', BUILT));
    expect(policy.get('script-src')).toBe("'self' 'sha256-a='");
    expect(policy.get('default-src')).toBe("'self'");
    expect(policy.get('connect-src')).toBe("'self'");
    for (const name of ['object-src', 'base-uri', 'frame-ancestors', 'frame-src'])
      expect(policy.get(name)).toBe("'none'");
  });

  it.each(['/no-such-page', '/__proto__', '/constructor', '__proto__', 'toString'])(
    'of an address without a page (%s) is that of the page that says so',
    (path) => {
      expect(directives(pagePolicy(path, BUILT)).get('script-src')).toBe("'self' 'sha256-n='");
    },
  );

  it('closes where the build left no hashes, and opens only for a development server', () => {
    const closed = pagePolicy('/', { hashes: {}, developing: false });
    expect(directives(closed).get('script-src')).toBe("'self'");
    expect(directives(pagePolicy('/', { hashes: {}, developing: true })).get('script-src')).toMatch(
      /unsafe-eval/,
    );
  });

  it('is sent with every page, strict unless the server says that it is a development server', () => {
    expect(process.env.NODE_ENV).not.toBe('development');
    const sent = proxy(new NextRequest('http://localhost/no-such-page')).headers.get(
      'content-security-policy',
    );
    expect(directives(sent ?? '').get('script-src')).toMatch(/^'self'/);
    expect(sent).not.toMatch(/unsafe-eval|script-src[^;]*unsafe/);
  });

  it('belongs to all that is neither API nor asset, which have their own', async () => {
    const matched = (path: string) => config.matcher.some((matcher) => new RegExp(`^${matcher}$`).test(path));
    expect(PATHS.filter(matched)).toEqual(['/', '/trail', '/open', '/no-such-page']);
    expect(['/apiary', '/icon.svg', '/offline-worker.js'].filter((path) => !matched(path))).toEqual([]);
    for (const path of PATHS.filter((each) => !matched(each)))
      expect((await configuredFor(path))['content-security-policy']).toContain("frame-ancestors 'none'");
  });
});
