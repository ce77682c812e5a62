import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { FAKE_HOSTS } from '@/.scripts/fake-weather-environment.mjs';
import { ALL_FAULTS, type Fault, misbehave, send } from './faults';
import { metNorwayForecast } from './met-norway';
import {
  openMeteoElevation,
  openMeteoHours,
  openMeteoPlaces,
  openMeteoSpread,
  perPlace,
  type World,
} from './open-meteo';
import { weatherGovGrid, weatherGovPoint } from './weather-gov';
import { weatherGovLatest, weatherGovStations } from './weather-gov-stations';

export type FakeHost = keyof typeof FAKE_HOSTS;

export type FakeWeather = {
  readonly url: string;
  /** For the app: read anew for every question, since 'refused' changes it. */
  readonly environment: () => Readonly<Record<string, string>>;
  readonly setFault: (host: FakeHost | 'all', fault: Fault) => void;
  /** Requests that reached a service since the last reset, as `host path?query`. */
  readonly calls: () => readonly string[];
  readonly close: () => Promise<void>;
};

export type FakeOptions = {
  readonly seed: number;
  readonly now: () => number;
  /** 0: any free one. */
  readonly port?: number;
  /** How long an answer takes [ms]. */
  readonly delayMs?: number;
};

/** Starts a local server that stands in for all forecast services, with their rules and on demand their faults. */
export async function startFakeWeather(options: FakeOptions): Promise<FakeWeather> {
  const faults = new Map<FakeHost, Fault>();
  const calls: string[] = [];
  /** Requests to Open-Meteo that have not been answered yet: it serves one at a time. */
  const underway = new Set<ServerResponse>();
  const setFault = (host: FakeHost | 'all', fault: Fault): void => {
    for (const name of host === 'all' ? hosts : [host]) faults.set(name, fault);
  };
  const server = createServer((request, response) => {
    const url = new URL(request.url ?? '/', 'http://fake');
    const [, first = '', ...rest] = url.pathname.split('/');
    if (first === 'faults') return control(request, response, rest, { faults, setFault, calls });
    const host = hosts.find((name) => name === first);
    if (host === undefined) return send(response, 404, '{}');
    const path = `/${rest.join('/')}`;
    calls.push(`${host} ${path}${url.search}`);
    if (host.startsWith('open-meteo')) {
      underway.add(response);
      response.on('close', () => underway.delete(response));
    }
    const world = { seed: options.seed, now: options.now() };
    const reply = answer({ host, path, query: url.searchParams, request, busy: underway.size > 1 }, world);
    setTimeout(() => {
      for (const [name, value] of Object.entries(reply.headers ?? {})) response.setHeader(name, value);
      if (reply.status !== 200) return send(response, reply.status, reply.body);
      misbehave(faults.get(host) ?? 'none', response, { body: reply.body, now: world.now });
    }, options.delayMs ?? 0);
  });
  await new Promise<void>((resolve) => server.listen(options.port ?? 0, '127.0.0.1', resolve));
  // A server listening on a port has an address object.
  const { port } = server.address() as AddressInfo;
  const url = `http://127.0.0.1:${port}`;
  return {
    url,
    environment: () => ({
      WEATHER_CONTACT: 'tests@example.org',
      ...Object.fromEntries(
        hosts.map((host) => [FAKE_HOSTS[host], faults.get(host) === 'refused' ? CLOSED : `${url}/${host}`]),
      ),
    }),
    setFault,
    calls: () => [...calls],
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}

/** Port 1 (tcpmux) is open on no machine that runs tests. */
const CLOSED = 'http://127.0.0.1:1';
// The keys of a constant object.
const hosts = Object.keys(FAKE_HOSTS) as FakeHost[];

type Asked = {
  readonly host: FakeHost;
  readonly path: string;
  readonly query: URLSearchParams;
  readonly request: IncomingMessage;
  readonly busy: boolean;
};
type Reply = {
  readonly status: number;
  readonly body: string;
  readonly headers?: Readonly<Record<string, string>>;
};

const good = (json: object, headers?: Readonly<Record<string, string>>): Reply => ({
  status: 200,
  body: JSON.stringify(json),
  ...(headers === undefined ? {} : { headers }),
});
const bad = (status: number, json: object): Reply => ({ status, body: JSON.stringify(json) });

function answer(asked: Asked, world: World): Reply {
  const { host, path, query } = asked;
  if (host === 'met-norway') return answerMetNorway(asked, world);
  if (host === 'weather-gov') return answerWeatherGov(asked, world);
  if (asked.busy) return bad(429, { error: true, reason: 'Too many concurrent requests' });
  if (host === 'open-meteo' && path === '/v1/elevation') return good(openMeteoElevation(query));
  if (host === 'open-meteo-geocoding') return good(openMeteoPlaces(query));
  const each = host === 'open-meteo-ensemble' ? openMeteoSpread : openMeteoHours;
  const answers = perPlace(query).map((one) => each(one, world));
  return good(answers.length === 1 ? answers[0]! : answers);
}

const AWAY_MS = 32 * 60_000;

function answerMetNorway({ query, request }: Asked, world: World): Reply {
  const agent = request.headers['user-agent'] ?? '';
  const tooFine = ['lat', 'lon'].some((name) => /\.\d{5,}/.test(query.get(name) ?? ''));
  if (!/[@]|https?:/.test(agent) || tooFine) return bad(403, {});
  const run = Math.floor(world.now / 3_600_000) * 3_600_000;
  const lastModified = new Date(run).toUTCString();
  const headers = { 'last-modified': lastModified, expires: new Date(world.now + AWAY_MS).toUTCString() };
  if (request.headers['if-modified-since'] === lastModified) return { status: 304, body: '', headers };
  return good(metNorwayForecast(query, world), headers);
}

function answerWeatherGov({ path, query, request }: Asked, world: World): Reply {
  if ((request.headers['user-agent'] ?? '') === '') return bad(403, {});
  if (query.size > 0) return bad(400, { title: 'Bad Request', status: 400 });
  const point = /^\/points\/(-?[\d.]+),(-?[\d.]+)$/.exec(path);
  if (point !== null) {
    const [latitude, longitude] = [Number(point[1]), Number(point[2])];
    const inside = latitude > 24 && latitude < 72 && longitude > -180 && longitude < -64;
    return inside
      ? good(weatherGovPoint(latitude, longitude))
      : bad(404, { title: 'Data Unavailable For Requested Point', status: 404 });
  }
  const around = /^\/gridpoints\/FAK\/(\d+),(\d+)\/stations$/.exec(path);
  if (around !== null) return good(weatherGovStations(Number(around[1]), Number(around[2])));
  const station = /^\/stations\/([A-Z0-9]+)\/observations\/latest$/.exec(path);
  if (station !== null) {
    const latest = weatherGovLatest(station[1] ?? '', world);
    return latest === null ? bad(404, { title: 'Not Found', status: 404 }) : good(latest);
  }
  const grid = /^\/gridpoints\/FAK\/(\d+),(\d+)$/.exec(path);
  return grid === null ? bad(404, {}) : good(weatherGovGrid(Number(grid[1]), Number(grid[2]), world));
}

type Controls = {
  readonly faults: ReadonlyMap<FakeHost, Fault>;
  readonly setFault: FakeWeather['setFault'];
  readonly calls: readonly string[];
};

/** `PUT /faults/<host or all>/<fault>` sets one; `GET /faults` tells what is set and what was asked. */
function control(
  request: IncomingMessage,
  response: ServerResponse,
  [host, fault]: readonly string[],
  { faults, setFault, calls }: Controls,
): void {
  if (request.method === 'PUT') {
    const name = [...hosts, 'all' as const].find((known) => known === host);
    const kind = ALL_FAULTS.find((known) => known === fault);
    if (name === undefined || kind === undefined) {
      send(response, 400, JSON.stringify({ hosts: [...hosts, 'all'], faults: ALL_FAULTS }));
      return;
    }
    setFault(name, kind);
  }
  send(response, 200, JSON.stringify({ faults: Object.fromEntries(faults), calls }));
}
