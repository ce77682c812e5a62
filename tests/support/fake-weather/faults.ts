import type { ServerResponse } from 'node:http';
import { SPOILT_ANSWERS, type SpoiltAnswer, spoilt } from './contradictions';
import {
  isSpoiltObservation,
  SPOILT_OBSERVATIONS,
  type SpoiltObservation,
  spoiltObservation,
} from './spoilt-observations';

/** The ways in which the fake can give no answer; 'refused' is made by leading callers to a closed port. */
export const FAULTS = [
  'none',
  'refused',
  'reset',
  'hang',
  'slow-drip',
  'half-body',
  'html',
  'empty-object',
  'nulls',
  'not-a-number',
  'status-500',
  'status-429',
  'huge',
  'wrong-units',
  'no-pressure',
  'redirect',
] as const;
export type BrokenAnswer = (typeof FAULTS)[number];
/** An answer that is not one, or one that contradicts itself. */
export type Fault = BrokenAnswer | 'not-gzip' | SpoiltAnswer | SpoiltObservation;
export const ALL_FAULTS: readonly Fault[] = [
  ...FAULTS,
  'not-gzip',
  ...SPOILT_ANSWERS,
  ...SPOILT_OBSERVATIONS,
];

/** Seconds that a rate-limited caller is told to stay away. */
export const RETRY_AFTER_S = 120;
const DRIP_MS = 20;
const HUGE_BYTES = 100_000_000;

/** Answers in the way of a fault; the good body is what it spoils. */
export function misbehave(
  fault: Fault,
  response: ServerResponse,
  { body, now }: { readonly body: string; readonly now: number },
): void {
  const socket = response.socket;
  switch (fault) {
    case 'none':
      send(response, 200, body);
      return;
    case 'refused':
    case 'reset':
      socket?.resetAndDestroy();
      return;
    case 'hang':
      return;
    case 'slow-drip':
      drip(response, body);
      return;
    case 'half-body':
      response.writeHead(200, {
        'content-type': 'application/json',
        'content-length': Buffer.byteLength(body),
      });
      response.write(body.slice(0, body.length / 2), () => socket?.destroy());
      return;
    case 'html':
      send(response, 200, '<!doctype html><title>Sign in to the hotel network</title>', 'text/html');
      return;
    case 'empty-object':
      send(response, 200, '{}');
      return;
    case 'nulls':
      send(response, 200, withoutValues(body));
      return;
    case 'not-a-number':
      send(
        response,
        200,
        body.replace(/("(?:temperature_2m(?:_spread)?|air_temperature|value)":\s*\[?)-?[\d.]+/g, '$1NaN'),
      );
      return;
    case 'status-500':
      send(response, 500, '{"title":"Unexpected Problem","status":500}');
      return;
    case 'status-429':
      response.setHeader('retry-after', String(RETRY_AFTER_S));
      send(
        response,
        429,
        '{"error":true,"reason":"Minutely API request limit exceeded. Please try again in one minute."}',
      );
      return;
    case 'huge':
      flood(response);
      return;
    case 'wrong-units':
      send(response, 200, inFahrenheit(body));
      return;
    case 'no-pressure':
      send(response, 200, withoutPressure(body));
      return;
    case 'redirect':
      response.writeHead(302, { location: 'http://127.0.0.1:9/elsewhere' }).end();
      return;
    case 'not-gzip':
      response.setHeader('content-encoding', 'gzip');
      send(response, 200, body);
      return;
    default:
      send(
        response,
        200,
        isSpoiltObservation(fault) ? spoiltObservation(fault, body) : spoilt(fault, body, now),
      );
  }
}

export function send(
  response: ServerResponse,
  status: number,
  body: string,
  type = 'application/json',
): void {
  response.writeHead(status, { 'content-type': type }).end(body);
}

function drip(response: ServerResponse, body: string): void {
  response.writeHead(200, { 'content-type': 'application/json' });
  let sent = 0;
  const timer = setInterval(() => {
    response.write(body[sent] ?? ' ');
    sent += 1;
  }, DRIP_MS);
  response.on('close', () => clearInterval(timer));
}

function flood(response: ServerResponse): void {
  response.writeHead(200, { 'content-type': 'application/json' });
  const chunk = Buffer.alloc(65_536, '[');
  let sent = 0;
  const more = (): void => {
    while (sent < HUGE_BYTES && !response.destroyed) {
      sent += chunk.length;
      if (!response.write(chunk)) {
        response.once('drain', more);
        return;
      }
    }
    response.end();
  };
  more();
}

/** Every measured value becomes null; times, units and places stay. */
function withoutValues(body: string): string {
  const json: unknown = JSON.parse(body, (key, value: unknown) => {
    if (
      /^(temperature_2m|dew_point_2m|relative_humidity_2m|surface_pressure|pressure_msl)/.test(key) &&
      Array.isArray(value)
    )
      return value.map(() => null);
    if (/^(air_|relative_humidity$|dew_point_temperature)/.test(key) && typeof value === 'number')
      return null;
    if (key === 'values' && Array.isArray(value))
      return value.map((run: object) => ({ ...run, value: null }));
    return value;
  });
  return JSON.stringify(json);
}

/** Temperatures in °F, said in the units. */
function inFahrenheit(body: string): string {
  return body
    .replaceAll('°C', '°F')
    .replaceAll('celsius', 'fahrenheit')
    .replaceAll('wmoUnit:degC', 'wmoUnit:degF');
}

function withoutPressure(body: string): string {
  const dropped = new Set(['surface_pressure', 'pressure_msl', 'air_pressure_at_sea_level']);
  return JSON.stringify(JSON.parse(body, (key, value: unknown) => (dropped.has(key) ? undefined : value)));
}
