import { createServer, type ServerResponse } from 'node:http';
import { type AddressInfo, connect } from 'node:net';
import { expect, it } from 'vitest';
import { watchConnections } from '@/app/api/_serve/ending';

/** A server whose answers are given by hand. */
async function handServer(patience = { halfSentMs: 100, answersMs: 5_000 }) {
  const waiting: ServerResponse[] = [];
  const server = createServer((_, response) => waiting.push(response));
  const { end } = watchConnections(server, patience);
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  const say = (text: string) => {
    const socket = connect(port, '127.0.0.1');
    let heard = '';
    socket.on('data', (data) => {
      heard += String(data);
    });
    const closed = new Promise<string>((resolve) => {
      socket.on('error', () => undefined);
      socket.once('close', () => resolve(heard));
    });
    return new Promise<{ closed: Promise<string> }>((resolve) => {
      socket.write(text, () => resolve({ closed }));
    });
  };
  const asked = async (count: number): Promise<void> => {
    while (waiting.length < count) await new Promise((done) => setTimeout(done, 2));
  };
  return { say, asked, end, waiting };
}

const GET = 'GET / HTTP/1.1\r\nHost: a\r\n\r\n';
const HALF = 'POST / HTTP/1.1\r\nHost: a\r\nContent-Length: 9\r\n\r\nhal';

it('answers what was asked, drops what was half sent, and is over then', async () => {
  const { say, asked, end, waiting } = await handServer();
  const whole = await say(GET);
  await asked(1);
  const half = await say(HALF);
  await asked(2);
  const [silent, head] = [await say(''), await say('GET / HT')];
  const over = end();
  // Dropped while the whole one still waits.
  expect(await Promise.all([silent.closed, head.closed, half.closed])).toEqual(['', '', '']);
  waiting[0]?.end('answered');
  const heard = await whole.closed;
  expect(heard).toMatch(/^HTTP\/1\.1 200 OK/);
  expect(heard.toLowerCase()).toContain('connection: close');
  expect(heard).toContain('answered');
  await over;
});

it('closes a connection whose answer had begun before the end, once the answer is whole', async () => {
  const { say, asked, end, waiting } = await handServer();
  const one = await say(GET);
  await asked(1);
  waiting[0]?.write('beginning ');
  const over = end();
  waiting[0]?.end('and end');
  expect(await one.closed).toContain('and end');
  await over;
});

it('waits for no answer for ever', async () => {
  const { say, asked, end } = await handServer({ halfSentMs: 20, answersMs: 60 });
  const never = await say(GET);
  await asked(1);
  await end();
  expect(await never.closed).toBe('');
});
