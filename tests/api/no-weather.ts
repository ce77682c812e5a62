import { afterEach, beforeEach, vi } from 'vitest';
import { FAKE_HOSTS } from '@/.scripts/fake-weather-environment.mjs';

/** Leads the routes to no weather service at all: tests of anything else must not reach for the network. */
export function withoutWeather(): void {
  beforeEach(() => {
    for (const variable of Object.values(FAKE_HOSTS)) vi.stubEnv(variable, 'nowhere');
  });
  afterEach(() => {
    vi.unstubAllEnvs();
  });
}
