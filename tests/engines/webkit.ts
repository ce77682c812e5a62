import type { Engine } from './engine';
import { freePort, heardFrom, openPrograms, type Programs } from './programs';

const DRIVER = process.env.WEBKIT_DRIVER ?? 'WebKitWebDriver';
const BROWSER = process.env.WEBKIT_BROWSER ?? 'MiniBrowser';

/** WebDriver (W3C) over HTTP: what WebKitGTK speaks. */
export async function openWebkit(origin: string): Promise<Engine> {
  const programs = openPrograms();
  try {
    const session = await openSession(programs);
    const ask: Engine['ask'] = async (run, ...args) => {
      const script = `return JSON.stringify([(${run})(...JSON.parse(arguments[0]))])`;
      const answer = await session('POST', '/execute/sync', { script, args: [JSON.stringify(args)] });
      return JSON.parse(String(answer))[0];
    };
    const errors: string[] = [];
    const collect = async (): Promise<void> => {
      errors.push(...(await ask(takeErrors)));
    };
    return {
      go: async (path) => {
        await collect();
        await session('POST', '/url', { url: origin + path });
        await collect();
      },
      back: async () => {
        await collect();
        await session('POST', '/back', {});
      },
      ask,
      errors: async () => {
        await collect();
        return errors;
      },
      close: async () => {
        await session('DELETE', '', undefined).catch(() => undefined);
        await programs.end();
      },
    };
  } catch (error) {
    await programs.end();
    throw error;
  }
}

/** Listens from the first time on; this protocol has no way to listen before a page's own scripts have begun. */
function takeErrors(): string[] {
  const page = window as unknown as { heardErrors?: string[] };
  if (page.heardErrors === undefined) {
    const heard: string[] = [];
    page.heardErrors = heard;
    const write = console.error;
    console.error = (...words: unknown[]) => {
      heard.push(words.map(String).join(' '));
      write(...words);
    };
    window.addEventListener('error', ({ message }) => heard.push(message));
    window.addEventListener('unhandledrejection', ({ reason }) => heard.push(`not caught: ${reason}`));
  }
  return page.heardErrors.splice(0);
}

type Send = (method: string, path: string, body: unknown) => Promise<unknown>;

async function openSession(programs: Programs): Promise<Send> {
  const screen = programs.start(
    'Xvfb',
    ['-displayfd', '3', '-screen', '0', '1280x1024x24', '-nolisten', 'tcp'],
    {
      stdio: ['ignore', 'ignore', 'ignore', 'pipe'],
    },
  );
  // The fourth stream was asked for as a pipe to read from.
  const display = await heardFrom(screen.stdio[3] as NodeJS.ReadStream, /(\d+)\n/);
  const port = await freePort();
  programs.start(DRIVER, [`--port=${port}`, '--host=127.0.0.1'], { env: { DISPLAY: `:${display}` } });
  const send: Send = async (method, path, body) => {
    const answer = await fetch(`http://127.0.0.1:${port}${path}`, {
      method,
      ...(body === undefined ? {} : { body: JSON.stringify(body) }),
    });
    const { value } = (await answer.json()) as { value: unknown };
    if (!answer.ok) throw new Error(`${method} ${path}: ${JSON.stringify(value)}`);
    return value;
  };
  const options = { binary: BROWSER, args: ['--automation'] };
  const made = await whenListening(() =>
    send('POST', '/session', { capabilities: { alwaysMatch: { 'webkitgtk:browserOptions': options } } }),
  );
  const { sessionId } = made as { sessionId: string };
  return (method, path, body) => send(method, `/session/${sessionId}${path}`, body);
}

/** A driver takes a moment until it listens. */
async function whenListening<R>(ask: () => Promise<R>): Promise<R> {
  for (let tries = 0; ; tries += 1)
    try {
      return await ask();
    } catch (error) {
      if (!(error instanceof TypeError) || tries === 100) throw error;
      await new Promise((resolve) => setTimeout(resolve, 100));
    }
}
