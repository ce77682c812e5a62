import { afterAll, beforeAll, beforeEach } from 'vitest';
import type { Fault } from './faults';
import { type FakeHost, type FakeWeather, startFakeWeather } from './server';

/** A fake for the tests of a file: one server, healthy and with no calls counted at the start of each test. */
export function fakeWeatherForTests(now: () => number, seed = 7): Omit<FakeWeather, 'url' | 'close'> {
  let running: FakeWeather | undefined;
  const fake = (): FakeWeather => {
    if (running === undefined) throw new Error('the fake runs only inside tests');
    return running;
  };
  beforeAll(async () => {
    running = await startFakeWeather({ seed, now });
  });
  beforeEach(() => fake().reset());
  afterAll(() => running?.close());
  return {
    environment: () => fake().environment(),
    setFault: (host: FakeHost | 'all', fault: Fault) => fake().setFault(host, fault),
    calls: () => fake().calls(),
    reset: () => fake().reset(),
  };
}
