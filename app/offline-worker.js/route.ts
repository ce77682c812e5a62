import { readFile } from 'node:fs/promises';
import { join } from 'node:path';

export const dynamic = 'force-dynamic';

/** The worker is written after the pages are rendered, so it is read from the build and not bundled. */
export async function GET(): Promise<Response> {
  try {
    const code = await readFile(join(process.cwd(), '.next', 'offline-worker.js'), 'utf8');
    return new Response(code, {
      headers: {
        'content-type': 'text/javascript; charset=utf-8',
        'cache-control': 'no-cache, no-store, must-revalidate',
      },
    });
  } catch {
    return new Response('There is no worker in a development build.', { status: 404 });
  }
}
