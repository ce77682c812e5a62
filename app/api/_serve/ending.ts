import type { IncomingMessage, Server, ServerResponse } from 'node:http';
import type { Socket } from 'node:net';

/** What a request that has not come in whole is still waited for [ms]. */
const HALF_SENT_MS = 1_000;
/** What answers under way may take [ms]; whoever started us kills us after ten seconds. */
const ANSWERS_MS = 8_000;

export type Patience = { readonly halfSentMs: number; readonly answersMs: number };

/**
 * Watches a server's connections, so that it can be ended: nothing new is taken, what was asked is answered, what came
 * in by half is dropped. The promise resolves when no connection is left.
 */
export function watchConnections(
  server: Server,
  { halfSentMs, answersMs }: Patience = { halfSentMs: HALF_SENT_MS, answersMs: ANSWERS_MS },
): { readonly end: () => Promise<void> } {
  const sockets = new Set<Socket>();
  const asked = new Map<ServerResponse, IncomingMessage>();
  let ending = false;
  server.on('connection', (socket: Socket) => {
    sockets.add(socket);
    socket.once('close', () => sockets.delete(socket));
  });
  server.prependListener('request', (request: IncomingMessage, response: ServerResponse) => {
    asked.set(response, request);
    if (ending) response.setHeader('connection', 'close');
    response.once('close', () => {
      asked.delete(response);
      // An answer that was on its way when the end began has said that the connection stays open.
      if (ending) request.socket.destroySoon();
    });
  });
  const dropUnless = (wanted: (request: IncomingMessage) => boolean): void => {
    const kept = new Set([...asked.values()].filter(wanted).map(({ socket }) => socket));
    for (const socket of sockets) if (!kept.has(socket)) socket.destroy();
  };
  const end = async (): Promise<void> => {
    ending = true;
    const closed = new Promise<void>((resolve) => server.close(() => resolve()));
    for (const response of asked.keys()) if (!response.headersSent) response.setHeader('connection', 'close');
    // Open without a request, or with half a head of one.
    dropUnless(() => true);
    const halfSent = setTimeout(() => dropUnless(({ complete }) => complete), halfSentMs);
    const unanswered = setTimeout(() => dropUnless(() => false), answersMs);
    await closed;
    clearTimeout(halfSent);
    clearTimeout(unanswered);
  };
  return { end };
}
