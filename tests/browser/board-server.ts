import { mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { startGroup } from '@/.scripts/process-group.mjs';
import { shiftTo, withShiftedClock } from '@/.scripts/shifted-clock.mjs';
import type { Instant } from '@/lib/time/instant';
import { changingWeather } from '../support/changing-weather';
import { startPushService } from '../support/push-service';

const freed = async (server: ReturnType<typeof createServer>): Promise<void> => {
  await new Promise<void>((resolve) => {
    server.close(() => resolve());
    server.closeAllConnections();
  });
};

/** Sea-level pressure [hPa] brought up to a height [m] under so many °C, by the barometric formula. */
function atHeight(seaLevel: number, celsius: number, height: number): number {
  const fall = 0.0065 * height;
  return Math.round(10 * seaLevel * (1 - fall / (celsius + 273.15 + fall)) ** 5.257) / 10;
}

/**
 * A server with boards of its own, weather that turns colder by so many kelvin after its first hour, and a push service
 * that opens what it gets. Its clock starts where it is told to at each start.
 */
export async function boardServer(
  port: number,
  { from, colder }: { readonly from: Instant; readonly colder: number },
) {
  const folder = mkdtempSync(join(tmpdir(), 'heavy-air-board-'));
  const weather = changingWeather({ from, startC: -8, fallPerHour: 1.5, shiftByHour: [0, -colder] });
  const hours = createServer((request, response) => {
    const asked = new URL(request.url ?? '/', 'https://hours.test');
    void weather.fetch(asked).then(async (answer) => {
      // A service answers for the place and the height it was asked about.
      const number = (name: string, otherwise: number) => Number(asked.searchParams.get(name) ?? otherwise);
      const [latitude, longitude] = [number('latitude', 0), number('longitude', 0)];
      const elevation = number('elevation', 250);
      const told = await answer.json();
      const surface = told.hourly.temperature_2m.map((celsius: number, i: number) =>
        atHeight(told.hourly.pressure_msl[i], celsius, elevation),
      );
      const hourly = { ...told.hourly, surface_pressure: surface };
      const body = { ...told, latitude, longitude, elevation, hourly };
      response.writeHead(answer.status, { 'content-type': 'application/json' }).end(JSON.stringify(body));
    });
  });
  await new Promise<void>((resolve) => hours.listen(0, '127.0.0.1', resolve));
  const address = hours.address();
  const push = await startPushService();
  const origin = `http://127.0.0.1:${port}`;
  let group: ReturnType<typeof startGroup> | null = null;
  return {
    origin,
    push,
    async start(now: Instant): Promise<void> {
      weather.setNow(now);
      group = startGroup('node', ['.next/serve/serve.mjs'], {
        stdio: 'ignore',
        env: {
          ...process.env,
          NODE_ENV: 'production',
          NODE_OPTIONS: withShiftedClock(''),
          CLOCK_SHIFT_MS: shiftTo(now),
          PORT: String(port),
          HOST: '127.0.0.1',
          DATA_DIR: folder,
          PUSH_SERVICES: push.url,
          OPEN_METEO_BASE_URL: `http://127.0.0.1:${typeof address === 'object' && address !== null ? address.port : 0}`,
          OPEN_METEO_ENSEMBLE_BASE_URL: 'nowhere',
          METNO_BASE_URL: 'nowhere',
          NWS_BASE_URL: 'nowhere',
        },
      });
      for (let tries = 0; tries < 150; tries += 1) {
        const answer = await fetch(`${origin}/api/health`).catch(() => null);
        if (answer?.ok === true) return;
        await new Promise((resolve) => setTimeout(resolve, 200));
      }
      throw new Error('the server with boards does not start');
    },
    async stop(): Promise<void> {
      await group?.end();
      group = null;
    },
    async end(): Promise<void> {
      await this.stop();
      await push.stop();
      await freed(hours);
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
