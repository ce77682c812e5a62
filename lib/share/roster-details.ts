import * as z from 'zod/mini';
import { type MachineJson, machineSchema } from '@/lib/contract/machine';
import { sameValue } from '@/lib/store/same-value';

/** What a file of ours knows of a machine beyond its columns; the schema of a machine judges it with the rest. */
const detailsSchema = z.looseObject({
  jetMarking: z.unknown(),
  baseline: z.optional(z.looseObject({ air: z.optional(z.looseObject({})) })),
});
type RosterDetails = z.output<typeof detailsSchema>;

/** The cell under "details"; null where it is not what was written there. */
export function readDetails(cell: string): RosterDetails | null {
  if (cell === '') return { jetMarking: undefined };
  try {
    return detailsSchema.safeParse(JSON.parse(cell)).data ?? null;
  } catch {
    return null;
  }
}

/** What the column says, else what the details hold, else flow; null where the column says something unknown. */
export function markingSaid(cell: string, listed: unknown): unknown {
  const said = cell.toLowerCase();
  if (said === '' || said === 'list') return listed ?? 'flow';
  return said === 'flow' || said === 'bore' ? said : null;
}

const BY_COLUMN: readonly string[] = ['name', 'carburettors', 'box', 'baseline'];
const AIR_BY_COLUMN: readonly string[] = ['temperatureC', 'pressureHpa', 'elevationM'];

/** What a machine has that nobody told; what equals it need not travel. */
const { baseline: DEFAULT_BASELINE, ...DEFAULTS } = machineSchema.parse({
  name: 'a',
  carburettors: [{ main: 1 }],
  box: [],
  baseline: { air: { temperatureC: 0, elevationM: 0 } },
});

/** What no column holds, as JSON for one cell; '' where that is nothing but defaults. */
export function detailsCell(machine: MachineJson): string {
  const { air, ...base } = machine.baseline;
  const marked = typeof machine.jetMarking === 'string' ? [...BY_COLUMN, 'jetMarking'] : BY_COLUMN;
  const told = beyond(machine, DEFAULTS, marked);
  const baseline = beyond(base, DEFAULT_BASELINE, []);
  const otherAir = beyond(air, {}, AIR_BY_COLUMN);
  const details = {
    ...told,
    ...(Object.keys({ ...baseline, ...otherAir }).length === 0
      ? {}
      : { baseline: { ...baseline, air: otherAir } }),
  };
  return Object.keys(details).length === 0 ? '' : JSON.stringify(details);
}

function beyond(all: object, known: object, columns: readonly string[]): Record<string, unknown> {
  const defaults = new Map(Object.entries(known));
  return Object.fromEntries(
    Object.entries(all).filter(
      ([key, value]) => value !== undefined && !columns.includes(key) && !sameValue(value, defaults.get(key)),
    ),
  );
}
