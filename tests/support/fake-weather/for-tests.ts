import { afterEach, beforeEach } from 'vitest';
import type { Fault } from './faults';
import { type FakeHost, type FakeWeather, startFakeWeather } from './server';

/**
 * A fake of its own for every test of a file, healthy and with no calls counted: what a test leaves under way meets a
 * closed port, not the next test.
 */
export function fakeWeatherForTests(now: () => number, seed = 7): Omit<FakeWeather, 'url' | 'close'> {
  let running: FakeWeather | undefined;
  const fake = (): FakeWeather => {
    if (running === undefined) throw new Error('the fake runs only inside tests');
    return running;
  };
  beforeEach(async () => {
    running = await startFakeWeather({ seed, now });
  });
  afterEach(() => running?.close());
  return {
    // Bound to the fake of the test that asks for it, for what that test leaves under way.
    get environment() {
      return fake().environment;
    },
    setFault: (host: FakeHost | 'all', fault: Fault) => fake().setFault(host, fault),
    calls: () => fake().calls(),
  };
}
