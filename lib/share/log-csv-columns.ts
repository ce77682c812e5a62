import type { LogRecord } from '@/lib/store/records';
import { cylindersText } from './cylinder-cell';

/** A log entry as one line of a table. */
export type LogRow = { readonly id: string; readonly machine: string; readonly value: LogRecord };

type Cell = string | number | null | undefined;
type LogColumn = {
  readonly name: string;
  /** A line cannot be understood without it. */
  readonly needed: boolean;
  readonly cell: (row: LogRow) => Cell;
};

const column = (name: string, cell: LogColumn['cell']): LogColumn => ({ name, needed: false, cell });
const needed = (name: string, cell: LogColumn['cell']): LogColumn => ({ name, needed: true, cell });

/** Columns of the run log, with the unit in the name where there is one. */
export const LOG_COLUMNS = [
  needed('time', ({ value }) => value.at),
  needed('machine', ({ machine }) => machine),
  column('run', ({ value }) => value.run),
  // Every jet is written, also where all are alike: a reader of the table does not know how many carburettors there are.
  needed('mains', ({ value }) => value.setting.mains.join('/')),
  column('trim', ({ value }) => value.setting.trim),
  column('verdict', ({ value }) => value.verdict),
  column('verdict_by_cylinder', ({ value }) => cylindersText(value.verdicts)),
  column('sizes', ({ value }) => value.sizes),
  column('judged_by', ({ value }) => value.judgedBy),
  column('seconds', ({ value }) => value.seconds),
  column('speed_kmh', ({ value }) => value.speedKmh),
  needed('temperature_c', ({ value }) => value.air.temperatureC),
  column('station_pressure_hpa', ({ value }) => value.air.pressureHpa),
  column('altimeter_hpa', ({ value }) => value.air.altimeterHpa),
  column('sea_level_hpa', ({ value }) => value.air.seaLevelHpa),
  column('elevation_m', ({ value }) => value.air.elevationM),
  column('relative_humidity', ({ value }) => value.air.relativeHumidity),
  column('dew_point_c', ({ value }) => value.air.dewPointC),
  column('frost_point_c', ({ value }) => value.air.frostPointC),
  column('note', ({ value }) => value.note),
  column('id', ({ id }) => id),
  column('machine_id', ({ value }) => value.machineId),
  column('event_id', ({ value }) => value.eventId),
] as const;
