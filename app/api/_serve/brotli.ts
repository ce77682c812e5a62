import { readFileSync } from 'node:fs';
import type { IncomingMessage, ServerResponse } from 'node:http';
import { join } from 'node:path';
import * as z from 'zod/mini';
import { wantsCoding } from './accept-encoding';

const listSchema = z.array(
  z.object({ path: z.string(), file: z.string(), plainBytes: z.int().check(z.positive()) }),
);

/** What the build compressed of one address. */
type Compressed = { readonly body: Buffer; readonly plainBytes: number };

/** By address, just as it is asked for: what is not listed is not there, so nothing a caller writes names a file. */
export type CompressedFiles = ReadonlyMap<string, Compressed>;

/** Reads what .scripts/brotli.mjs left in the build of a folder. */
export function readCompressed(folder: string): CompressedFiles {
  const at = join(folder, '.next', 'brotli');
  const list = listSchema.parse(JSON.parse(readFileSync(join(at, 'files.json'), 'utf8')));
  return new Map(
    list.map(({ path, file, plainBytes }) => [path, { body: readFileSync(join(at, file)), plainBytes }]),
  );
}

/** A part of a file is counted in bytes of the plain one, and so left to the framework. */
const wantsPart = ({ headers }: IncomingMessage): boolean => headers.range !== undefined;

const calledBack = (given: readonly unknown[]): void => {
  for (const each of given) if (typeof each === 'function') process.nextTick(each);
};

/**
 * Lets the framework answer as if nothing could be compressed, and sends what the build compressed in place of the body
 * where its answer is that very file, whole. So every header is the framework's own; another answer of the same address
 * (nothing has changed, an error, the data of a page) is of another status or length and goes out as it is.
 */
export function answerInBrotli(
  request: IncomingMessage,
  response: ServerResponse,
  files: CompressedFiles,
  path: string,
): void {
  const compressed = files.get(path);
  if (compressed === undefined || wantsPart(request)) return;
  if (!wantsCoding(String(request.headers['accept-encoding'] ?? ''), 'br')) return;
  delete request.headers['accept-encoding'];
  const { body, plainBytes } = compressed;
  const { writeHead, write, end } = response;
  let replaced = false;
  const isTheFile = (status: unknown): boolean =>
    status === 200 &&
    Number(response.getHeader('content-length')) === plainBytes &&
    !response.hasHeader('content-encoding');
  Object.assign(response, {
    writeHead: (...given: unknown[]) => {
      replaced = isTheFile(given[0]);
      if (replaced) {
        response.setHeader('content-encoding', 'br');
        response.setHeader('content-length', body.length);
        if (!/accept-encoding/i.test(String(response.getHeader('vary') ?? '')))
          response.appendHeader('vary', 'Accept-Encoding');
      }
      return Reflect.apply(writeHead, response, given);
    },
    write: (...given: unknown[]) => {
      if (!response.headersSent) response.writeHead(response.statusCode);
      if (!replaced) return Reflect.apply(write, response, given);
      calledBack(given);
      return true;
    },
    end: (...given: unknown[]) => {
      if (!response.headersSent && isTheFile(response.statusCode)) response.writeHead(response.statusCode);
      if (!replaced) return Reflect.apply(end, response, given);
      return Reflect.apply(end, response, [body, ...given.filter((each) => typeof each === 'function')]);
    },
  });
}
