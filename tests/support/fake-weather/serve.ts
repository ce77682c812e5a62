// `npm run fake-weather [-- --port 4010 --seed 7 --fault hang]`: all forecast services on one local port.
import { parseArgs } from 'node:util';
import { ALL_FAULTS } from './faults';
import { startFakeWeather } from './server';

const { values } = parseArgs({
  options: {
    port: { type: 'string', default: '4010' },
    seed: { type: 'string', default: '7' },
    fault: { type: 'string', default: 'none' },
    delay: { type: 'string', default: '80' },
  },
});
const fault = ALL_FAULTS.find((known) => known === values.fault);
if (fault === undefined) throw new Error(`unknown fault ${values.fault}; known: ${ALL_FAULTS.join(', ')}`);

const fake = await startFakeWeather({
  seed: Number(values.seed),
  port: Number(values.port),
  delayMs: Number(values.delay),
  now: () => Date.now(),
});
const lines = Object.entries(fake.environment()).map(([name, value]) => `  ${name}=${value}`);
fake.setFault('all', fault);
console.log(
  `Fake weather on ${fake.url}. Start the app beside it with:\n${lines.join(' \\\n')} \\\n  npm start`,
);
console.log(
  `Faults: curl -X PUT ${fake.url}/faults/<${'host|all'}>/<${ALL_FAULTS.join('|')}>; state: ${fake.url}/faults`,
);
