import { createServer, type Server } from 'node:http';
import { Counter, collectDefaultMetrics, Gauge, Histogram, Registry } from 'prom-client';
import type { Watch } from './watch';

/** Seconds; the goals of an answer (health 0.1, a poll 0.05) are among them. */
const BUCKETS = [0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 5, 10];

type Told = { readonly waitingPlans: () => number };

/** Figures for Prometheus: of the process, of requests by route, of weather and push services and of planning. No caller, no address. */
export function createMetrics({ waitingPlans }: Told): {
  readonly watch: Watch;
  readonly listen: (port: number, host: string) => Promise<Server>;
} {
  const registry = new Registry();
  const registers = [registry];
  collectDefaultMetrics({ register: registry });
  const requests = new Histogram({
    name: 'heavy_air_request_seconds',
    help: 'Requests answered, by route, method and status',
    labelNames: ['route', 'method', 'status'],
    buckets: BUCKETS,
    registers,
  });
  const failures = new Counter({
    name: 'heavy_air_upstream_failures_total',
    help: 'Requests to weather and push services that failed, by host and reason',
    labelNames: ['host', 'code'],
    registers,
  });
  const plans = new Histogram({
    name: 'heavy_air_planning_seconds',
    help: 'Planning, waiting included, by outcome',
    labelNames: ['outcome'],
    buckets: BUCKETS,
    registers,
  });
  const waiting: Gauge = new Gauge({
    name: 'heavy_air_plans_waiting',
    help: 'Requests that wait for a thread',
    registers,
    collect: () => {
      waiting.set(waitingPlans());
    },
  });
  return {
    watch: {
      served: ({ route, method, status, seconds }) =>
        requests.observe({ route, method, status: String(status) }, seconds),
      upstreamFailed: (host, code) => failures.inc({ host, code }),
      planned: ({ outcome, waitedSeconds, workedSeconds }) =>
        plans.observe({ outcome }, waitedSeconds + workedSeconds),
    },
    listen: (port, host) => listen(registry, port, host),
  };
}

/** On a port of its own, so that no proxy in front shows it by mistake. */
function listen(registry: Registry, port: number, host: string): Promise<Server> {
  const server = createServer((request, response) => {
    if (request.url !== '/metrics' || request.method !== 'GET') {
      response.writeHead(404).end();
      return;
    }
    registry.metrics().then(
      (text) => response.writeHead(200, { 'content-type': registry.contentType }).end(text),
      () => response.writeHead(500).end(),
    );
  });
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, host, () => resolve(server));
  });
}
