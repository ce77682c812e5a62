import { expect, it } from 'vitest';
import { forecastFaultText } from '@/lib/words/forecast-fault';

const refusedWith = (status: number) =>
  ({ code: 'refused', status, detail: 'The server’s own words.', retryAfterSeconds: null }) as const;

it('tells in two words what hinders the forecast, each fault by words of its own', () => {
  expect(forecastFaultText({ code: 'no-signal' })).toBe('no signal');
  expect(forecastFaultText(refusedWith(429))).toBe('service busy');
  expect(forecastFaultText(refusedWith(503))).toBe('service down');
  // What it was asked for lies outside of what it has: it is up, and does not give it.
  expect(forecastFaultText(refusedWith(404))).toBe('not given');
});
