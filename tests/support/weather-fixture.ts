import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { ROOT } from './source-tree';

/** A recorded answer from tests/fixtures/weather; where it is from stands in SOURCES.md there. */
export function weatherFixture(name: string): unknown {
  return JSON.parse(readFileSync(join(ROOT, 'tests', 'fixtures', 'weather', name), 'utf8'));
}
