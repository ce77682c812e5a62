// The server of the built app: `npm start` loads it, a container and a service run it. The build bundles it into
// .next/serve, from where it finds the build it belongs to.
import { readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { fileURLToPath } from 'node:url';
import { createThreads } from '@/app/api/_planning/threads';
import { VERSION } from '@/lib/contract/version';
import { answering } from './answering';
import { readCompressed } from './brotli';
import { watchConnections } from './ending';
import { createLog, type Log, logSaid, takeOverConsole, writingTo } from './log';
import { readRoutes } from './routes';
import { announceServedProcess, type ServedProcess } from './served-process';
import { readServeSettings, type ServeSettings, SettingProblem } from './settings';
import { logWatch, type Watch, watchAll } from './watch';

/** Longer than proxies keep a connection they do not use, so that it is they who close it [ms]. */
const KEEP_ALIVE_MS = 75_000;
/** What a head and a whole request may take to come in [ms]. */
const HEAD_MS = 15_000;
const REQUEST_MS = 60_000;

const seconds = (): number => performance.now() / 1000;

/** Loads the framework for the build in a folder. Nothing of it is in this bundle. */
async function loadApp(folder: string, { host, port }: ServeSettings) {
  const built = JSON.parse(readFileSync(`${folder}/.next/required-server-files.json`, 'utf8'));
  // As the framework's own server of a folder that runs on its own does: the settings of the build count, not a file.
  Object.assign(process.env, {
    NODE_ENV: 'production',
    NEXT_TELEMETRY_DISABLED: '1',
    __NEXT_PRIVATE_STANDALONE_CONFIG: JSON.stringify(built.config),
  });
  const { default: next } = await import('next');
  const app = next({ dev: false, dir: folder, hostname: host, port });
  await app.prepare();
  return app;
}

async function watchOf(log: Log, settings: ServeSettings, waitingPlans: () => number): Promise<Watch> {
  const logged = logWatch(log, { all: settings.logsRequests });
  if (settings.metricsPort === null) return logged;
  const { createMetrics } = await import('./metrics');
  const metrics = createMetrics({ waitingPlans });
  await metrics.listen(settings.metricsPort, settings.host);
  return watchAll([logged, metrics.watch]);
}

async function serve(log: Log): Promise<void> {
  const settings = readServeSettings(process.env);
  const folder = fileURLToPath(new URL('../..', import.meta.url)).replace(/[/\\]$/, '');
  // Pages and the worker read what the build left by paths below this folder.
  process.chdir(folder);
  const planning = createThreads({
    file: new URL('./thread.mjs', import.meta.url),
    count: settings.planningThreads,
    seconds,
    planned: (outcome, waitedSeconds, workedSeconds) =>
      watch.planned({ outcome, waitedSeconds, workedSeconds }),
  });
  const watch = await watchOf(log, settings, planning.waiting);
  const served: ServedProcess = {
    ending: false,
    straight: [],
    planning,
    upstreamFailed: watch.upstreamFailed,
  };
  announceServedProcess(served);
  const app = await loadApp(folder, settings);
  const server = createServer({
    keepAliveTimeout: KEEP_ALIVE_MS,
    headersTimeout: HEAD_MS,
    requestTimeout: REQUEST_MS,
  });
  const connections = watchConnections(server);
  const fail = (thrown: unknown): void => logSaid(log, 'error', [thrown]);
  const handler = app.getRequestHandler();
  const routeOf = readRoutes(folder);
  const compressed = readCompressed(folder);
  const straight = () => served.straight;
  server.on(
    'request',
    answering({ settings, routeOf, compressed, watch, seconds, fail, straight, answer: handler }),
  );
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject);
    server.listen(settings.port, settings.host, resolve);
  });
  log('info', 'serving', { version: VERSION, host: settings.host, port: settings.port });
  const end = async (signal: string): Promise<void> => {
    if (served.ending) return;
    served.ending = true;
    const began = seconds();
    log('info', 'ending', { signal });
    await connections.end();
    log('info', 'ended', { ms: Math.round((seconds() - began) * 1000) });
    process.exit(0);
  };
  for (const signal of ['SIGTERM', 'SIGINT', 'SIGHUP']) process.on(signal, () => void end(signal));
}

const log = createLog(writingTo(process.stdout), () => new Date().toISOString());
// Nothing of ours goes there, but what the framework or Node themselves say.
process.stderr.on('error', () => undefined);
takeOverConsole(log);
try {
  await serve(log);
} catch (problem) {
  if (problem instanceof SettingProblem) log('error', 'setting', { words: problem.message });
  else logSaid(log, 'error', [problem]);
  process.exit(1);
}
