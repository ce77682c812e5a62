type Level = 'info' | 'warn' | 'error';
type Fields = Readonly<Record<string, string | number | boolean | readonly string[] | undefined>>;

/** Writes one line; no field may hold what somebody sent, who sent it, or a place. */
export type Log = (level: Level, event: string, fields?: Fields) => void;

/** Calls of a stack that are worth reading. */
const MOST_FRAMES = 6;
const MOST_CHARACTERS = 200;

/** JSON lines (one object a line) for whoever collects them. */
export function createLog(write: (line: string) => void, now: () => string): Log {
  return (level, event, fields = {}) =>
    write(`${JSON.stringify({ time: now(), level, event, ...fields })}\n`);
}

/**
 * Writes to a stream as long as somebody reads it. That nobody does any more is told as a fault of the stream: unheard, it
 * would itself be logged, to the same stream, for ever.
 */
export function writingTo(stream: NodeJS.WritableStream): (line: string) => void {
  let read = true;
  stream.on('error', () => {
    read = false;
  });
  return (line) => {
    if (read) stream.write(line);
  };
}

/**
 * What is known of a thrown thing without what was in hand: its kind and the places in the code. Its message is left
 * out, since it may repeat what somebody sent.
 */
function faultFields(thrown: Error): Fields {
  const frames = (thrown.stack ?? '').split('\n').filter((line) => /^\s+at /.test(line));
  const code = (thrown as { readonly code?: unknown }).code;
  return {
    error: thrown.name,
    code: typeof code === 'string' ? code : undefined,
    at: frames.slice(0, MOST_FRAMES).map((line) =>
      line
        .trim()
        .replace(/^at /, '')
        .replace(/[^\s(]*\//g, ''),
    ),
  };
}

/** The words of a sentence: addresses, numbers and whatever is in quotes may be somebody's. */
function bareWords(text: string): string {
  return text
    .replace(/(["'`]).*?\1/gs, '…')
    .replace(/\S*[/\\]\S*/g, '…')
    .replace(/\S*\d\S*/g, '…')
    .replace(/\s+/g, ' ')
    .slice(0, MOST_CHARACTERS);
}

/** One thing that was written to the console, by us or by the framework, as a line. */
export function logSaid(log: Log, level: Level, said: readonly unknown[]): void {
  const thrown = said.find((each): each is Error => each instanceof Error);
  const words = said.filter((each): each is string => typeof each === 'string').map(bareWords);
  log(level, thrown === undefined ? 'said' : 'fault', {
    ...(words.length === 0 ? {} : { words: words.join(' ') }),
    ...(thrown === undefined ? {} : faultFields(thrown)),
  });
}

/** From now on whatever this process writes to its console becomes lines of the log. */
export function takeOverConsole(log: Log): void {
  const at =
    (level: Level) =>
    (...said: readonly unknown[]): void =>
      logSaid(log, level, said);
  Object.assign(console, {
    log: at('info'),
    info: at('info'),
    debug: at('info'),
    warn: at('warn'),
    error: at('error'),
  });
}
