import { Agent, createServer, get } from 'node:http';
import type { AddressInfo } from 'node:net';

const CONNECTIONS = 16;

/** One request, its answer read to the end; anything but 200 stops the measurement. */
function ask(url: string, agent: Agent): Promise<void> {
  return new Promise((resolve, reject) => {
    get(url, { agent }, (response) => {
      if (response.statusCode !== 200) reject(new Error(`${url} answered ${response.statusCode}`));
      response.on('data', () => undefined).on('end', resolve);
    }).on('error', reject);
  });
}

/** Answers per second from an address, over connections that stay open. */
export async function requestRate(url: string, count: number): Promise<number> {
  const agent = new Agent({ keepAlive: true, maxSockets: CONNECTIONS });
  const start = performance.now();
  const worker = async (): Promise<void> => {
    for (let i = 0; i < count / CONNECTIONS; i += 1) await ask(url, agent);
  };
  await Promise.all(Array.from({ length: CONNECTIONS }, worker));
  agent.destroy();
  return (count * 1000) / (performance.now() - start);
}

export type Handler = (request: Request) => Response | Promise<Response>;

/** Serves handlers by path over loopback, with as little around them as there can be. */
export async function serveHandlers(
  handlers: Readonly<Record<string, Handler>>,
): Promise<{ readonly url: string; readonly close: () => void }> {
  const server = createServer(async (incoming, outgoing) => {
    const handler = handlers[new URL(incoming.url ?? '/', 'http://local').pathname];
    const response = await handler!(new Request(`http://local${incoming.url}`));
    outgoing.writeHead(response.status, Object.fromEntries(response.headers));
    outgoing.end(Buffer.from(await response.arrayBuffer()));
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  // A server listening on a port has an address object.
  const { port } = server.address() as AddressInfo;
  return {
    url: `http://127.0.0.1:${port}`,
    close: () => {
      server.close();
      server.closeAllConnections();
    },
  };
}

/** Median of several rounds of both, taken in turn so that a busy machine slows both alike. */
export async function medianRates(
  rounds: number,
  ours: () => Promise<number>,
  peer: () => Promise<number>,
): Promise<{ readonly ours: number; readonly peer: number; readonly ratio: number }> {
  const rates = { ours: [] as number[], peer: [] as number[], ratio: [] as number[] };
  for (let round = 0; round < rounds; round += 1) {
    // Who goes first changes, so that neither always meets a warm machine.
    const first = round % 2 === 0 ? await ours() : await peer();
    const second = round % 2 === 0 ? await peer() : await ours();
    const [mine, theirs] = round % 2 === 0 ? [first, second] : [second, first];
    rates.ours.push(mine);
    rates.peer.push(theirs);
    rates.ratio.push(mine / theirs);
  }
  const median = (values: number[]): number => values.sort((a, b) => a - b)[Math.floor(values.length / 2)]!;
  return { ours: median(rates.ours), peer: median(rates.peer), ratio: median(rates.ratio) };
}
