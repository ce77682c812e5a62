import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import * as z from 'zod/mini';
import { boardsAnswer } from '@/app/api/_boards/server-boards';
import { servedProcess } from '@/app/api/_serve/served-process';

/** What must hold before requests are sent to this server, by name: true where it holds. What a request needs and can be missing belongs here, such as a database. */
export type Checks = Readonly<Record<string, () => boolean | Promise<boolean>>>;

export const CHECKS: Checks = {
  serving: () => servedProcess()?.ending !== true,
  // Where nothing was ever posted there is no database to ask.
  database: boardsAnswer,
};

/** Each check's outcome; one that throws does not hold. */
export async function outcomes(checks: Checks): Promise<Readonly<Record<string, boolean>>> {
  const done = Object.entries(checks).map(async ([name, check]) => {
    const holds = await Promise.resolve()
      .then(check)
      .catch(() => false);
    return [name, holds] as const;
  });
  return Object.fromEntries(await Promise.all(done));
}

const builtFromSchema = z.object({ buildId: z.string(), commit: z.nullable(z.string()) });
export type BuiltFrom = z.output<typeof builtFromSchema>;

/** What the build left about itself; nothing in a development server. */
export function readBuiltFrom(): BuiltFrom | null {
  try {
    const text = readFileSync(join(process.cwd(), '.next', 'built-from.json'), 'utf8');
    return builtFromSchema.parse(JSON.parse(text));
  } catch {
    return null;
  }
}
