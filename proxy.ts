import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type NextRequest, NextResponse } from 'next/server';
import { type HashesByPage, pagePolicy } from '@/app/_headers/page-policy';

/** Written by the build after every page has been rendered. */
function readHashes(): HashesByPage {
  try {
    return JSON.parse(readFileSync(join(process.cwd(), '.next', 'inline-script-hashes.json'), 'utf8'));
  } catch {
    return {};
  }
}

const developing = process.env.NODE_ENV === 'development';
const hashes = developing ? {} : readHashes();

export function proxy(request: NextRequest): NextResponse {
  const response = NextResponse.next();
  response.headers.set(
    'content-security-policy',
    pagePolicy(request.nextUrl.pathname, { hashes, developing }),
  );
  return response;
}

/** What is no page has a fixed policy; next.config.ts sets it. */
export const config = { matcher: ['/((?!_next/|api$|api/).*)'] };
