import type { AirStateJson } from '@/lib/contract/air';
import type { ReadingJson, RunJson, SettingJson } from '@/lib/contract/event';
import { instantFromJson } from '@/lib/contract/event-from-json';
import { partText } from '@/lib/store/leaves';
import { eventOfRacer } from '@/lib/store/racer-event';
import type { EventRecord, LogRecord, MachineRecord, TableName, TableValue } from '@/lib/store/records';
import type { ClockZone, HourStyle } from '@/lib/time/zone';
import type { UnitChoice } from '@/lib/units/choice';
import { celsiusToKelvin } from '@/lib/units/convert';
import { formatTemperature } from '@/lib/units/format';
import { baselineText, provenAirText } from './baseline';
import { counted } from './listing';
import { settingText } from './settings';
import { dateClockText } from './times';

/** What sentences about single fields of records need to know beside them. */
export type FieldVoice = {
  readonly units: UnitChoice;
  readonly hours: HourStyle;
  /** '' where there is no such machine. */
  readonly machineName: (id: string) => string;
};

/** A record, or what was one when nothing better is known. */
export type AboutRecord = { readonly table: TableName; readonly value: TableValue[TableName] | null };

const FIELDS: Readonly<Record<string, string>> = {
  name: 'Name',
  'event/name': 'Name',
  'machine/name': 'Name',
  'event/timezone': 'Time zone',
  'event/place': 'Place',
  'event/elevationM': 'Elevation',
  'event/runs': 'Runs',
  'event/swapMinutes': 'Time for a swap',
  'event/ride': 'One setting for all runs',
  typed: 'Typed hours',
  'typed/pressure': 'Pressure of the typed hours',
  'typed/relativeHumidity': 'Humidity of the typed hours',
  'typed/pressureConfirmed': 'Pressure of the typed hours, stood by',
  placeOffset: 'What past nights taught about the place',
  withoutPlaceOffset: 'Plan without what past nights taught',
  demo: 'Invented night',
  proven: 'Jets that were right',
  'machine/jetMarking': 'Jet marking',
  'machine/markingSure': 'Jet marking, stood by',
  'machine/pilot': 'Pilot',
  'machine/needle': 'Needle',
  'machine/limits': 'Limits',
  'machine/intakeOffsetC': 'Air at the carburettor',
  'machine/response': 'Response to the air',
  'machine/richPowerLoss': 'Cost of running rich',
  'machine/swapWorthPercent': 'What a swap must save',
  'machine/ratedPowerHp': 'Rated power',
  'machine/fuelDensity': 'Fuel temperature',
  'machine/hardware': 'Parts',
  'machine/baselineShift': 'What the log taught',
  'machine/tonight': 'What the plugs of tonight ask for',
  boxId: 'Shared box',
  learnedLevel: 'What the log taught',
  found: 'Verdict',
  setting: 'Jets',
  air: 'Air',
  at: 'Time',
  run: 'Run',
  note: 'Note',
  seconds: 'Seconds',
  speedKmh: 'Speed',
  machineId: 'Machine',
  eventId: 'Night',
  part: 'Part',
  hardware: 'Part',
  standard: 'Standard',
  distanceM: 'Distance',
};

/** What a field is called, with whose it is: "Round 4 of Blue 600". */
export function labelOfField(
  { table, value }: AboutRecord,
  path: string,
  { machineName }: FieldVoice,
): string {
  const [head = '', first = '', second = '', third = ''] = path.split('/').map(partText);
  const night = table === 'events' ? (value as EventRecord | null) : null;
  const machine = machineName(first) || 'a machine that is not here';
  switch (head) {
    case '':
      return 'Everything';
    case 'fitted':
      return `What is in ${machine}`;
    case 'fittings':
      return `Put in ${machine}`;
    case 'made': {
      const runs: readonly RunJson[] = night === null ? [] : eventOfRacer(night, first).runs;
      return `${runs[Number(second)]?.name ?? `Run ${Number(second) + 1}`} of ${machine}`;
    }
    case 'outFrom':
      return `${machine} is out`;
    case 'machineIds':
      return 'On the roster';
    case 'readings':
      return 'Reading';
    case 'club':
      return first === 'classes'
        ? 'Class'
        : `${RACER[third] ?? 'Roster'} of ${machineName(second) || 'a racer'}`;
    case 'baselines':
      return 'Baseline';
    case 'chart':
      return 'Chart';
    case 'pulls':
      return 'Pull or run';
    case 'entries':
      return 'Box';
    default:
      if (path.startsWith('machine/box/')) return 'Box';
      if (path.startsWith('typed/hours/')) return 'Typed hour';
      return FIELDS[path] ?? FIELDS[head] ?? 'One more field';
  }
}

const RACER: Readonly<Record<string, string>> = { name: 'Racer’s name', classId: 'Class' };

type Proven = {
  readonly carburettors?: readonly { readonly main: number }[];
  readonly baseline?: { readonly air: AirStateJson };
};

/** What a field says; null where it is more than a few words. */
export function fieldText(
  { table, value: record }: AboutRecord,
  path: string,
  value: unknown,
  voice: FieldVoice,
): string | null {
  const [head = '', first = '', second = ''] = path.split('/');
  const zone: ClockZone =
    table === 'events' && record !== null
      ? { zone: (record as EventRecord).event.timezone, hours: voice.hours }
      : { zone: 'UTC', hours: voice.hours };
  const time = (text: string): string => dateClockText(instantFromJson(text), zone);
  if (value === undefined || value === null || value === '') return 'nothing';
  if (head === 'fitted' || path === 'setting') return settingText(value as SettingJson);
  if (head === 'made') return settingText((value as { setting: SettingJson }).setting);
  if (head === 'fittings') {
    const { at, setting } = value as { at: string; setting: SettingJson };
    return `${settingText(setting)} on ${time(at)}`;
  }
  if (head === 'readings' || path.startsWith('typed/hours/')) {
    const { time: at, temperatureC } = value as ReadingJson;
    return `${formatTemperature(celsiusToKelvin(temperatureC), voice.units, 1)} at ${time(at)}`;
  }
  if (head === 'entries' || (first === 'box' && second !== '')) {
    const { size, count } = value as { size: number; count: number };
    return `${count} of ${size}`;
  }
  if (head === 'outFrom') return `from ${time(value as string)}`;
  if (head === 'machineIds') return voice.machineName(value as string) || 'a machine that is not here';
  if (path === 'event/runs') return runsText(value as readonly RunJson[], time);
  if (head === 'club' && first === 'classes') return (value as { name: string }).name;
  if (path === 'event/place') return (value as { name: string }).name || 'a point on the map';
  if (head === 'baselines') return baselineText(value as MachineRecord['baselines'][number]);
  if (path === 'proven') return provenText(value as Proven, voice.units);
  if (path === 'found') return verdictText(value as LogRecord);
  if (path === 'at') return time(value as string);
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'number') return String(value);
  return typeof value === 'string' ? `“${value}”` : null;
}

function runsText(runs: readonly RunJson[], time: (text: string) => string): string {
  const [first] = runs;
  return first === undefined ? 'no runs' : `${counted(runs.length, 'run')} from ${time(first.start)}`;
}

function provenText({ carburettors = [], baseline }: Proven, units: UnitChoice): string {
  const jets = settingText({ mains: carburettors.map(({ main }) => main), trim: null });
  return baseline === undefined ? jets : `${jets} in ${provenAirText(baseline.air, units)}`;
}

function verdictText({ verdict, sizes }: Pick<LogRecord, 'verdict' | 'sizes'>): string {
  if (verdict === null) return 'none';
  return sizes === null || sizes === 0 ? verdict : `${counted(sizes, 'size')} ${verdict}`;
}
