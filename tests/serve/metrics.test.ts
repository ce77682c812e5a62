import { afterEach, expect, it } from 'vitest';
import { createMetrics } from '@/app/api/_serve/metrics';

const stops: (() => void)[] = [];
afterEach(() => {
  for (const stop of stops.splice(0)) stop();
});

/** Figures on a port of their own, as text. */
async function told() {
  const metrics = createMetrics({ waitingPlans: () => 3 });
  const server = await metrics.listen(0, '127.0.0.1');
  stops.push(() => server.close());
  const address = server.address();
  if (address === null || typeof address === 'string') throw new Error('no port');
  const ask = (path: string) => fetch(`http://127.0.0.1:${address.port}${path}`);
  return { watch: metrics.watch, ask };
}

it('tells figures in the text format that Prometheus reads, by route and host, and no caller', async () => {
  const { watch, ask } = await told();
  watch.served({ route: '/api/plan', method: 'POST', status: 200, seconds: 0.3 });
  watch.upstreamFailed('metNorway', 'timeout');
  watch.upstreamFailed('metNorway', 'timeout');
  watch.planned({ outcome: 'done', waitedSeconds: 0.25, workedSeconds: 0.5 });
  const answer = await ask('/metrics');
  // Prometheus text exposition format 0.0.4.
  expect(answer.headers.get('content-type')).toContain('text/plain; version=0.0.4');
  const lines = (await answer.text()).split('\n');
  expect(lines).toContain('heavy_air_upstream_failures_total{host="metNorway",code="timeout"} 2');
  expect(lines).toContain('heavy_air_plans_waiting 3');
  expect(lines).toContain('heavy_air_planning_seconds_sum{outcome="done"} 0.75');
  expect(lines).toContain(
    'heavy_air_request_seconds_bucket{le="0.25",route="/api/plan",method="POST",status="200"} 0',
  );
  expect(lines).toContain(
    'heavy_air_request_seconds_bucket{le="0.5",route="/api/plan",method="POST",status="200"} 1',
  );
  expect(lines.some((line) => line.startsWith('process_resident_memory_bytes'))).toBe(true);
});

it('tells nothing at another address', async () => {
  const { ask } = await told();
  expect((await ask('/')).status).toBe(404);
  expect((await ask('/api/health')).status).toBe(404);
});
