import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type NextRequest, NextResponse } from 'next/server';

/** Next's name for the page shown where there is none. */
const NOT_FOUND = '/_not-found';

type HashesByPage = Readonly<Record<string, readonly string[]>>;

/** Written by the build; a development server has none and needs looser rules. */
function readHashes(): HashesByPage | null {
  try {
    return JSON.parse(readFileSync(join(process.cwd(), '.next', 'inline-script-hashes.json'), 'utf8'));
  } catch {
    return null;
  }
}

const hashes = process.env.NODE_ENV === 'production' ? readHashes() : null;

function contentSecurityPolicy(path: string): string {
  const scripts =
    hashes === null ? "'unsafe-inline' 'unsafe-eval'" : (hashes[path] ?? hashes[NOT_FOUND] ?? []).join(' ');
  return [
    "default-src 'self'",
    `script-src 'self' ${scripts}`.trim(),
    // Recharts and React set style attributes; a style attribute runs nothing.
    "style-src 'self' 'unsafe-inline'",
    "img-src 'self' data: blob:",
    "connect-src 'self'",
    "worker-src 'self'",
    "object-src 'none'",
    "base-uri 'none'",
    "form-action 'self'",
    "frame-ancestors 'none'",
  ].join('; ');
}

export function proxy(request: NextRequest): NextResponse {
  const response = NextResponse.next();
  response.headers.set('content-security-policy', contentSecurityPolicy(request.nextUrl.pathname));
  return response;
}

export const config = { matcher: ['/((?!_next/static|api/).*)'] };
