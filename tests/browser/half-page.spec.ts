import { createServer } from 'node:http';
import { expectNothingMoved, keepMoves } from './moves';
import { test } from './test';

/** Long enough for a browser to paint what it has. */
const HALF_MS = 400;

/**
 * Serves a site anew, but each page in two halves: up to `end`, and a while later the rest. A page without `end` is told
 * as a fault. Its scripts are kept back: they change what has arrived.
 */
async function startHalving(site: string, end: string) {
  const server = createServer(async (request, response) => {
    if (request.url?.endsWith('.js')) return void response.writeHead(404).end();
    const answer = await fetch(`${site}${request.url}`);
    const header = (name: string) => answer.headers.get(name) ?? '';
    const type = header('content-type');
    const body = Buffer.from(await answer.arrayBuffer());
    const cut = type.startsWith('text/html') ? body.indexOf(end) : 0;
    response.writeHead(cut < 0 ? 500 : answer.status, {
      'content-type': type,
      // So that the face of the first page is at hand for those after it: what moves then is not a matter of halves.
      'cache-control': header('cache-control'),
    });
    response.write(body.subarray(0, cut));
    setTimeout(() => response.end(body.subarray(cut)), cut > 0 ? HALF_MS : 0);
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const address = server.address();
  if (address === null || typeof address === 'string') throw new Error('no port');
  return {
    origin: `http://127.0.0.1:${address.port}`,
    stop: () =>
      new Promise<void>((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}

// On a slow line, or a slow phone, a page arrives bit by bit.
test('a page that arrives in two halves moves nothing of the first when the second comes', async ({
  page,
  baseURL,
}) => {
  await keepMoves(page);
  const halving = await startHalving(baseURL ?? '', '<button');
  for (const path of ['/', '/trail', '/club', '/machines', '/log', '/compare', '/about', '/open']) {
    await page.goto(`${halving.origin}${path}`, { waitUntil: 'commit' });
    await page.getByRole('button', { name: 'Display' }).waitFor();
    await expectNothingMoved(page);
  }
  await halving.stop();
});
