import { Agent, request } from 'node:http';
import { type BoardNight, boardPostSchema } from '@/lib/contract/board';
import { NIGHT } from '@/tests/api/night';

/** One engine with one carburettor, a night of typed hours with a run every so many: a board that asks no weather service. */
export function nightFrom(start: number, hours: number, runHours = 1): BoardNight {
  const at = (hour: number) => new Date(start + hour * 3_600_000).toISOString();
  return boardPostSchema.parse({
    event: {
      ...NIGHT.event,
      runs: Array.from({ length: Math.max(1, Math.floor(hours / runHours)) }, (_, i) => ({
        name: `Round ${i + 1}`,
        start: at((i + 1) * runHours),
        end: at((i + 1) * runHours + 1 / 6),
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
export type Ask = (asked: Asked) => Promise<Answered>;

/** Asks a server over connections that stay open, as browsers do. */
export function asker(url: string, sockets: number): { readonly ask: Ask; readonly close: () => void } {
  const agent = new Agent({ keepAlive: true, maxSockets: sockets });
  const ask = ({ method = 'GET', path, headers = {}, body }: Asked): Promise<Answered> =>
    new Promise((resolve, reject) => {
      const began = performance.now();
      const send = (): void => {
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
        // A connection that was long unused may close as it is used again; browsers then ask once more, too.
        asked.on('error', (fault: NodeJS.ErrnoException) => {
          if (asked.reusedSocket && fault.code === 'ECONNRESET') send();
          else reject(fault);
        });
        asked.end(body);
      };
      send();
    });
  return { ask, close: () => agent.destroy() };
}

export type PostedBoard = { readonly id: string; readonly keepSecret: string; readonly followSecret: string };

/** Posts boards, each as if by another caller behind our own proxy, counted from the first. */
export async function post(
  url: string,
  boards: number,
  nightOf: (i: number) => object,
  first = 0,
): Promise<readonly PostedBoard[]> {
  const { ask, close } = asker(url, 4);
  const posted: PostedBoard[] = [];
  for (let i = first; i < first + boards; i += 1) {
    const body = JSON.stringify(nightOf(i));
    const headers = { 'content-type': 'application/json', 'x-forwarded-for': `10.0.${i >> 8}.${i & 255}` };
    const answer = await ask({ method: 'POST', path: '/api/boards', headers, body });
    if (answer.status !== 201) throw new Error(`not posted: ${answer.status} ${answer.text}`);
    posted.push(JSON.parse(answer.text));
  }
  close();
  return posted;
}

/** A follower's look, by the tag of the last one where there was one. */
export function lookAt({ id, followSecret }: PostedBoard, etag = ''): Asked {
  const authorization = `Bearer ${followSecret}`;
  const headers: Record<string, string> = { authorization };
  if (etag !== '') headers['if-none-match'] = etag;
  return { path: `/api/boards/${id}`, headers };
}

/** Starts something so many times a second, whether or not the last one is done, for some seconds; the first fault ends it. */
export async function steadily(
  perSecond: number,
  seconds: number,
  one: (i: number) => Promise<void>,
): Promise<void> {
  const faults: unknown[] = [];
  const under: Promise<void>[] = [];
  const began = performance.now();
  const all = Math.floor(perSecond * seconds);
  for (let i = 0; i < all && faults.length === 0; ) {
    const due = Math.min(all, ((performance.now() - began) / 1000) * perSecond);
    for (; i < due; i += 1) under.push(one(i).catch((fault: unknown) => void faults.push(fault)));
    await new Promise((done) => setTimeout(done, 5));
  }
  await Promise.all(under);
  if (faults.length > 0) throw faults[0];
}

/** Does something so many times, a few at once. */
export async function inTurn(times: number, wide: number, one: (i: number) => Promise<void>): Promise<void> {
  let next = 0;
  const hand = async (): Promise<void> => {
    while (next < times) {
      next += 1;
      await one(next - 1);
    }
  };
  await Promise.all(Array.from({ length: wide }, hand));
}

/** The value that so large a share stays below. */
export function quantile(values: readonly number[], share: number): number {
  return (
    values.toSorted((a, b) => a - b)[Math.min(values.length - 1, Math.floor(values.length * share))] ?? 0
  );
}
