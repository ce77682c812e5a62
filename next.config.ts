import { fileURLToPath } from 'node:url';
import type { NextConfig } from 'next';
import { hashOfSources } from './.scripts/sources.mjs';
import { ASSET_POLICY, DATA_POLICY, SECURITY_HEADERS } from './app/_headers/security-headers';

/** page.dev.tsx is a page while developing and nothing at all in a build. */
const PAGES = ['tsx', 'ts'];
const DEVELOPING = process.env.NODE_ENV === 'development';
const ROOT = fileURLToPath(new URL('.', import.meta.url));
/** The same sources are the same build wherever they are built, so any number of servers serve the same files. */
const BUILD_ID = hashOfSources().slice(0, 20);

const config: NextConfig = {
  pageExtensions: DEVELOPING ? ['dev.tsx', ...PAGES] : PAGES,
  poweredByHeader: false,
  // A library of machine code and its loader: to be found where they were installed.
  serverExternalPackages: ['libsql', 'pg', 'kysely', 'web-push'],
  reactStrictMode: true,
  generateBuildId: () => BUILD_ID,
  // Beside what `npm start` serves, a folder that runs on its own.
  output: 'standalone',
  outputFileTracingRoot: ROOT,
  // Reads of files below the working folder are taken for reads of all of it.
  outputFileTracingExcludes: {
    '*': ['.cache/**', '.next/cache/**', '.next/serve/**', '.next/brotli/**', '.next/standalone/**'],
  },
  turbopack: {
    root: ROOT,
    // Of all its scales the charts use two.
    resolveAlias: { 'victory-vendor/d3-scale': './.scripts/chart-scales.mjs' },
  },
  // No page shows a picture that needs scaling; the address that scales them would be work for anybody who asks.
  images: { unoptimized: true },
  headers: () =>
    Promise.resolve([
      { source: '/(.*)', headers: [...SECURITY_HEADERS] },
      // Pages have hashes in theirs; proxy.ts sets it.
      { source: '/api', headers: [...DATA_POLICY] },
      { source: '/api/(.*)', headers: [...DATA_POLICY] },
      { source: '/_next/(.*)', headers: [...ASSET_POLICY] },
    ]),
};

export default config;
