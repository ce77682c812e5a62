import type { NextConfig } from 'next';

/** For every answer. */
const SECURITY_HEADERS = [
  { key: 'x-content-type-options', value: 'nosniff' },
  { key: 'x-frame-options', value: 'DENY' },
  // Nobody outside needs to know which page, or which server of somebody's own, a link was followed from.
  { key: 'referrer-policy', value: 'same-origin' },
  {
    key: 'permissions-policy',
    value:
      'geolocation=(self), camera=(), microphone=(), payment=(), usb=(), serial=(), hid=(), midi=(), display-capture=()',
  },
  { key: 'cross-origin-opener-policy', value: 'same-origin' },
  { key: 'cross-origin-resource-policy', value: 'same-origin' },
  // Browsers heed this only over https (RFC 6797, section 8.1), so a plain http install on a local network keeps working.
  { key: 'strict-transport-security', value: 'max-age=63072000; includeSubDomains' },
];

const policy = (...directives: readonly string[]) => [
  {
    key: 'content-security-policy',
    value: [...directives, "object-src 'none'", "base-uri 'none'", "frame-ancestors 'none'"].join('; '),
  },
];

/** Answers of the API: shown by themselves they may run, load and send nothing. */
const DATA_POLICY = policy("default-src 'none'", "form-action 'none'", 'sandbox');
/** Scripts and styles; a policy of theirs counts only where one is started as a worker. */
const ASSET_POLICY = policy("default-src 'self'");

/** page.dev.tsx is a page while developing and nothing at all in a build. */
const PAGES = ['tsx', 'ts'];
const DEVELOPING = process.env.NODE_ENV === 'development';

const config: NextConfig = {
  pageExtensions: DEVELOPING ? ['dev.tsx', ...PAGES] : PAGES,
  poweredByHeader: false,
  // A library of machine code and its loader: to be found where they were installed.
  serverExternalPackages: ['libsql', 'pg', 'kysely', 'web-push'],
  reactStrictMode: true,
  // No page shows a picture that needs scaling; the address that scales them would be work for anybody who asks.
  images: { unoptimized: true },
  headers: () =>
    Promise.resolve([
      { source: '/(.*)', headers: SECURITY_HEADERS },
      // Pages have hashes in theirs; proxy.ts sets it.
      { source: '/api', headers: DATA_POLICY },
      { source: '/api/(.*)', headers: DATA_POLICY },
      { source: '/_next/(.*)', headers: ASSET_POLICY },
    ]),
};

export default config;
