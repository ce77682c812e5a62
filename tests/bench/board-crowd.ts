import { Agent, request } from 'node:http';
import { boardPostSchema } from '@/lib/contract/board';
import { NIGHT } from '@/tests/api/night';

/** One engine with one carburettor, a night of typed hours: a board that asks no weather service. */
export function nightFrom(start: number, hours: number): object {
  const at = (hour: number) => new Date(start + hour * 3_600_000).toISOString();
  return boardPostSchema.parse({
    event: {
      ...NIGHT.event,
      runs: Array.from({ length: Math.max(1, Math.floor(hours)) }, (_, i) => ({
        name: `Round ${i + 1}`,
        start: at(i + 1),
        end: at(i + 1 + 1 / 6),
      })),
    },
    hours: Array.from({ length: Math.ceil(hours) + 4 }, (_, i) => ({
      ...NIGHT.hours[0]!,
      time: at(i - 1),
      temperatureC: -8 - 4 * Math.sin(i / 4),
    })),
    machines: [
      { id: 'ada', machine: { ...NIGHT.machine, carburettors: NIGHT.machine.carburettors.slice(0, 1) } },
    ],
  });
}

export type Asked = {
  readonly method?: string;
  readonly path: string;
  readonly headers?: Readonly<Record<string, string>>;
  readonly body?: string;
};
export type Answered = {
  readonly status: number;
  readonly etag: string;
  readonly text: string;
  readonly ms: number;
};

/** Asks a server over connections that stay open, as browsers do. */
export function asker(url: string, sockets: number) {
  const agent = new Agent({ keepAlive: true, maxSockets: sockets });
  const ask = ({ method = 'GET', path, headers = {}, body }: Asked): Promise<Answered> =>
    new Promise((resolve, reject) => {
      const began = performance.now();
      const asked = request(`${url}${path}`, { agent, method, headers }, (answer) => {
        const parts: Buffer[] = [];
        answer.on('data', (part: Buffer) => parts.push(part));
        answer.on('end', () =>
          resolve({
            status: answer.statusCode ?? 0,
            etag: String(answer.headers.etag ?? ''),
            text: Buffer.concat(parts).toString('utf8'),
            ms: performance.now() - began,
          }),
        );
      });
      asked.on('error', reject);
      asked.end(body);
    });
  return { ask, close: () => agent.destroy() };
}

/** Starts something so many times a second, whether or not the last one is done, for some seconds. */
export async function steadily(
  perSecond: number,
  seconds: number,
  one: (i: number) => Promise<void>,
): Promise<void> {
  const under: Promise<void>[] = [];
  const began = performance.now();
  const all = Math.floor(perSecond * seconds);
  for (let i = 0; i < all; ) {
    const due = Math.min(all, ((performance.now() - began) / 1000) * perSecond);
    for (; i < due; i += 1) under.push(one(i));
    await new Promise((done) => setTimeout(done, 5));
  }
  await Promise.all(under);
}

/** The value that so large a share stays below. */
export function quantile(values: readonly number[], share: number): number {
  return (
    values.toSorted((a, b) => a - b)[Math.min(values.length - 1, Math.floor(values.length * share))] ?? 0
  );
}
