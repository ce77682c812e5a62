import type { Engine } from './engine';
import { heardFrom, openPrograms, type Programs } from './programs';

const BROWSER = process.env.FIREFOX ?? 'firefox-esr';

/** WebDriver BiDi (W3C) over a web socket: what Firefox speaks by itself. */
export async function openFirefox(origin: string): Promise<Engine> {
  const programs = openPrograms();
  try {
    const errors: string[] = [];
    const send = await openSocket(programs, (text) => errors.push(text));
    await send('session.new', { capabilities: {} });
    await send('session.subscribe', { events: ['log.entryAdded'] });
    const tree = (await send('browsingContext.getTree', {})) as { contexts: { context: string }[] };
    const context = tree.contexts[0]?.context;
    return {
      go: async (path) => {
        await send('browsingContext.navigate', { context, url: origin + path, wait: 'complete' });
      },
      back: async () => {
        await send('browsingContext.traverseHistory', { context, delta: -1 });
      },
      ask: async (run, ...args) => {
        const functionDeclaration = `(args) => JSON.stringify([(${run})(...JSON.parse(args))])`;
        const answer = await send('script.callFunction', {
          functionDeclaration,
          arguments: [{ type: 'string', value: JSON.stringify(args) }],
          awaitPromise: false,
          target: { context },
        });
        const { result, exceptionDetails } = answer as {
          result?: { value: string };
          exceptionDetails?: { text: string };
        };
        if (result === undefined) throw new Error(exceptionDetails?.text);
        return JSON.parse(result.value)[0];
      },
      errors: async () => errors,
      close: programs.end,
    };
  } catch (error) {
    await programs.end();
    throw error;
  }
}

type Send = (method: string, params: unknown) => Promise<unknown>;
type Message =
  | { readonly type: 'success'; readonly id: number; readonly result: unknown }
  | { readonly type: 'error'; readonly id: number; readonly error: string; readonly message: string }
  | {
      readonly type: 'event';
      readonly method: string;
      readonly params: { readonly level: string; readonly text: string };
    };

async function openSocket(programs: Programs, onError: (text: string) => void): Promise<Send> {
  const program = programs.start(
    BROWSER,
    ['--headless', '--no-remote', '--remote-debugging-port=0', '--profile', programs.home],
    { stdio: ['ignore', 'ignore', 'pipe'] },
  );
  const address = await heardFrom(program.stderr, /WebDriver BiDi listening on (ws:\S+)/);
  const socket = new WebSocket(`${address}/session`);
  await new Promise((resolve, reject) => {
    socket.onopen = resolve;
    socket.onerror = reject;
  });
  const waiting = new Map<number, { resolve: (result: unknown) => void; reject: (error: Error) => void }>();
  socket.onmessage = ({ data }) => {
    const message: Message = JSON.parse(String(data));
    if (message.type === 'event') {
      if (message.method === 'log.entryAdded' && message.params.level === 'error')
        onError(message.params.text);
      return;
    }
    const asked = waiting.get(message.id);
    waiting.delete(message.id);
    if (message.type === 'success') asked?.resolve(message.result);
    else asked?.reject(new Error(`${message.error}: ${message.message}`));
  };
  let last = 0;
  return (method, params) =>
    new Promise((resolve, reject) => {
      last += 1;
      waiting.set(last, { resolve, reject });
      socket.send(JSON.stringify({ id: last, method, params }));
    });
}
