import type { NextConfig } from 'next';

/** The content security policy needs hashes known only after the build; proxy.ts sets it. */
const SECURITY_HEADERS = [
  { key: 'x-content-type-options', value: 'nosniff' },
  { key: 'x-frame-options', value: 'DENY' },
  { key: 'referrer-policy', value: 'strict-origin-when-cross-origin' },
  {
    key: 'permissions-policy',
    value: 'geolocation=(self), camera=(), microphone=(), payment=()',
  },
  { key: 'cross-origin-opener-policy', value: 'same-origin' },
  // Browsers heed this only over https, so a plain http install on a local network keeps working.
  { key: 'strict-transport-security', value: 'max-age=63072000; includeSubDomains' },
];

const config: NextConfig = {
  poweredByHeader: false,
  reactStrictMode: true,
  headers: () => Promise.resolve([{ source: '/(.*)', headers: SECURITY_HEADERS }]),
};

export default config;
