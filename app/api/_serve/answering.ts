import type { IncomingMessage, RequestListener, ServerResponse } from 'node:http';
import { ASSET_POLICY, DATA_POLICY, SECURITY_HEADERS } from '@/app/_headers/security-headers';
import { type Problem, problemResponse } from '@/app/api/_http/problem';
import { answerInBrotli, type CompressedFiles } from './brotli';
import { callerOfSocket } from './caller-address';
import type { RouteOf } from './routes';
import { CALLER_HEADER } from './served-process';
import type { ServeSettings } from './settings';
import { answerStraight, type StraightRoute } from './straight';
import type { Watch } from './watch';

type Answering = {
  readonly settings: Pick<ServeSettings, 'httpsOnlySeconds' | 'httpsOnlyBelow'>;
  readonly routeOf: RouteOf;
  readonly compressed: CompressedFiles;
  readonly watch: Watch;
  /** Seconds of a clock that only goes forward. */
  readonly seconds: () => number;
  /** Hears of what nobody expected. */
  readonly fail: (thrown: unknown) => void;
  /** What is answered without the framework. */
  readonly straight: () => readonly StraightRoute[];
  /** The framework. */
  readonly answer: (request: IncomingMessage, response: ServerResponse) => Promise<void>;
};

const OF_PAGES = ['GET', 'HEAD'];
/** Whatever else HTTP knows (TRACE, and all of WebDAV) has no meaning here. */
const OF_THE_API = [...OF_PAGES, 'POST', 'PUT', 'PATCH', 'DELETE', 'OPTIONS'];

/** What every answer is sent with; a page or the API replaces its policy and how long it is kept, nothing else. */
function headersFor(path: string, { httpsOnlySeconds, httpsOnlyBelow }: Answering['settings']) {
  const asset = path.startsWith('/_next/');
  const policy = asset ? ASSET_POLICY : DATA_POLICY;
  const value = `max-age=${httpsOnlySeconds}${httpsOnlyBelow ? '; includeSubDomains' : ''}`;
  // Browsers heed this only over https (RFC 6797, section 8.1).
  const httpsOnly = httpsOnlySeconds > 0 ? [{ key: 'strict-transport-security', value }] : [];
  // A page names the files of its build and its policy their hashes, so nobody between may hand out an old one: it is
  // asked for again each time, and answered with a nod, since its ETag is made of what is in it.
  const asked = asset || isOfTheApi(path) ? [] : [{ key: 'cache-control', value: 'no-cache' }];
  return [...SECURITY_HEADERS, ...httpsOnly, ...policy, ...asked];
}

const isOfTheApi = (path: string): boolean => /^\/api(\/|$)/.test(path);

function pathOf({ url = '/' }: IncomingMessage): string {
  const end = url.search(/[?#]/);
  return end < 0 ? url : url.slice(0, end);
}

/** An address is written in percent signs and hexadecimal digits that are UTF-8 (RFC 3986, section 2.5), or it names nothing. */
function canBeRead(path: string): boolean {
  try {
    decodeURIComponent(path);
    return true;
  } catch {
    return false;
  }
}

/** Why a request is not for the framework to see; null: it is. */
function refusalOf({ method = '' }: IncomingMessage, path: string): Problem | null {
  if (!canBeRead(path))
    return { status: 400, detail: 'This address has a percent sign that stands for no letter.' };
  const allowed = isOfTheApi(path) ? OF_THE_API : OF_PAGES;
  if (allowed.includes(method)) return null;
  const allow = allowed.join(', ');
  return { status: 405, detail: `This address takes ${allow} only.`, headers: { allow } };
}

async function refuse(response: ServerResponse, problem: Problem): Promise<void> {
  const refused = problemResponse(problem);
  response.writeHead(refused.status, { ...Object.fromEntries(refused.headers), connection: 'close' });
  response.end(await refused.text());
}

/**
 * Answers requests, most of them with the framework. Before anybody sees one: the headers of every answer, who asks, and
 * a refusal of what it would fail on aloud: strange methods, addresses that cannot be read, and calls of server actions,
 * which there are none of.
 */
export function answering(how: Answering): RequestListener {
  const { settings, routeOf, compressed, watch, seconds, fail, straight, answer } = how;
  return (request, response) => {
    const began = seconds();
    const path = pathOf(request);
    response.once('close', () => {
      const method = OF_THE_API.includes(request.method ?? '') ? (request.method ?? '') : 'other';
      // Whoever hung up before an answer began has status 499 here, as is usual (common practice, no source).
      const status = response.headersSent ? response.statusCode : 499;
      watch.served({ route: routeOf(path), method, status, seconds: seconds() - began });
    });
    for (const { key, value } of headersFor(path, settings)) response.setHeader(key, value);
    request.headers[CALLER_HEADER] = callerOfSocket(request.socket.remoteAddress);
    delete request.headers['next-action'];
    const refusal = refusalOf(request, path);
    if (refusal === null && OF_PAGES.includes(request.method ?? ''))
      answerInBrotli(request, response, compressed, path);
    const answered =
      refusal === null
        ? (answerStraight(straight(), path, { request, response }) ?? answer(request, response))
        : refuse(response, refusal);
    answered.catch((fault: unknown) => {
      fail(fault);
      if (!response.headersSent) response.writeHead(500, { 'cache-control': 'no-store' });
      response.end();
    });
  };
}
