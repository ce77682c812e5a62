import { describe, expect, it } from 'vitest';
import { type LocateProblem, locateProblemWords } from '@/components/weather/locate';
import type { BoxTextProblem } from '@/lib/carb/box-text';
import type { HardwareProblem } from '@/lib/carb/hardware';
import type { LinkProblem } from '@/lib/contract/link-problem';
import type { LogCsvProblem } from '@/lib/contract/log-csv-problem';
import type { ContractReason } from '@/lib/contract/problem';
import type { RosterLineProblem, RosterTableProblem } from '@/lib/contract/roster-problem';
import type { PasteProblem } from '@/lib/hours/pasted';
import type { FairProblem } from '@/lib/power/pull';
import type { BackupProblem } from '@/lib/store/backup-file';
import type { ChartProblem } from '@/lib/store/read-chart';
import { instant } from '@/lib/time/instant';
import type { ClockProblem } from '@/lib/time/local';
import type { InstantProblem } from '@/lib/time/zone';
import type { GpxProblem } from '@/lib/trail/gpx';
import type { RideProblem } from '@/lib/trail/ride';
import type { TrackProblem } from '@/lib/trail/track-ride';
import { US_UNITS } from '@/lib/units/choice';
import type { EntryProblem } from '@/lib/units/entry-number';
import type { MetarProblem } from '@/lib/weather/metar/metar-problem';
import type { LookupProblem, WeatherProblem } from '@/lib/weather/problem';
import { airProblemSentence } from '@/lib/words/air-problems';
import { backupProblemSentence } from '@/lib/words/backup';
import { boxProblemWords } from '@/lib/words/box-text';
import { chartProblemSentence } from '@/lib/words/chart-problems';
import { clockProblemSentence } from '@/lib/words/clock-problems';
import { contractProblemSentence } from '@/lib/words/contract-problems';
import { entryProblemSentence } from '@/lib/words/entry-problems';
import { fairProblemSentence } from '@/lib/words/fair';
import { gpxProblemSentence, trackProblemSentence } from '@/lib/words/gpx-problems';
import { hardwareProblemSentence } from '@/lib/words/hardware';
import { linkProblemSentence } from '@/lib/words/link-problems';
import { csvProblemSentence } from '@/lib/words/log-csv-problems';
import { metarProblemSentence } from '@/lib/words/observations';
import { pasteProblemSentence } from '@/lib/words/paste';
import { planProblemSentence } from '@/lib/words/plan-problems';
import { rideAirProblemSentence, rideProblemSentence } from '@/lib/words/ride';
import { rosterLineSentence, rosterTableSentence } from '@/lib/words/roster';
import { lookupProblemSentence, weatherProblemSentence } from '@/lib/words/weather-problems';
import { AIR, type Every, PLAN } from './problem-examples';

const AT = instant(Date.UTC(2027, 0, 16, 20));
const VOICE = { zone: 'America/Chicago', units: US_UNITS };

const HARDWARE: Every<HardwareProblem> = {
  'amount-missing': { code: 'amount-missing', kind: 'bored' },
  'amount-out-of-range': { code: 'amount-out-of-range', kind: 'bored', amount: 40, most: 10 },
};

/** `field` is a schema's own words about one field, such as "expected a number": the field itself is where to mend. */
const CONTRACT: Every<Exclude<ContractReason, { code: 'field' }>> = {
  ...AIR,
  ...PLAN,
  ...HARDWARE,
  'same-hour-twice': { code: 'same-hour-twice', at: AT },
  'jet-not-in-list': { code: 'jet-not-in-list', size: 415 },
  'mains-do-not-fit': { code: 'mains-do-not-fit', mains: 1, carburettors: 2 },
  'trim-not-there': { code: 'trim-not-there' },
  'trim-out-of-range': { code: 'trim-out-of-range', trim: 9, lowest: 1, highest: 5 },
  'no-such-run': { code: 'no-such-run', run: 7, runs: 3 },
  'run-made-twice': { code: 'run-made-twice', run: 0 },
  'event-too-long': { code: 'event-too-long', days: 365, limit: 31 },
  'hours-too-far-apart': { code: 'hours-too-far-apart', days: 365, limit: 62 },
  'settings-do-not-match-runs': { code: 'settings-do-not-match-runs', settings: 2, runs: 3 },
  'too-few-jets-listed': { code: 'too-few-jets-listed', listed: 1 },
  'jet-not-positive': { code: 'jet-not-positive', size: -1, area: 2 },
  'size-listed-twice': { code: 'size-listed-twice', size: 410 },
  'area-not-rising': { code: 'area-not-rising', size: 410, next: 420 },
};

const ENTRY: Every<EntryProblem> = {
  empty: { code: 'empty' },
  'not-a-number': { code: 'not-a-number', text: 'minus ten' },
  'too-large': { code: 'too-large', text: '1e309' },
  'ambiguous-mark': { code: 'ambiguous-mark', text: '1,600', decimal: 1.6, thousands: 1600 },
  'unknown-unit': { code: 'unknown-unit', unit: 'psi' },
};

const CLOCK: Every<ClockProblem | InstantProblem> = {
  'not-a-date': { code: 'not-a-date', text: 'x' },
  'not-a-clock': { code: 'not-a-clock', text: 'x' },
  'unknown-zone': { code: 'unknown-zone', zone: 'x' },
  'missing-hour': { code: 'missing-hour', change: { at: AT, minutes: 60, from: '02:00', to: '03:00' } },
  'no-offset': { code: 'no-offset', text: 'x' },
  'not-a-time': { code: 'not-a-time', text: 'x' },
};

const PASTE: Every<Exclude<PasteProblem, { code: 'ask' }>> = {
  empty: { code: 'empty' },
  'too-long': { code: 'too-long', limit: 9 },
  'too-many-lines': { code: 'too-many-lines', limit: 9 },
  'too-many-columns': { code: 'too-many-columns', limit: 9 },
  'unknown-zone': { code: 'unknown-zone', zone: 'x' },
  'not-a-date': { code: 'not-a-date', text: 'x' },
  'not-a-clock': { code: 'not-a-clock', text: 'x' },
  'no-temperature-column': { code: 'no-temperature-column' },
  'unit-conflict': { code: 'unit-conflict', column: 1, header: '°F', cell: '°C' },
  'times-run-backwards': { code: 'times-run-backwards' },
  'no-hours': { code: 'no-hours', skipped: [] },
};

const SITE = {
  'not-a-place': { code: 'not-a-place', latitude: 91, longitude: 0 },
  'elevation-out-of-range': { code: 'elevation-out-of-range', elevation: 9000 },
} as const;

const WEATHER: Every<WeatherProblem> = {
  ...SITE,
  'all-sources-failed': {
    code: 'all-sources-failed',
    tries: [{ source: 'open-meteo', problem: { code: 'timeout' } }],
    retryAfterSeconds: 30,
  },
  'outside-forecast': { code: 'outside-forecast', hoursStart: AT, hoursEnd: AT },
};

const LOOKUP: Every<LookupProblem> = {
  ...SITE,
  'name-too-short': { code: 'name-too-short' },
  'no-stations-here': { code: 'no-stations-here' },
  'not-in-archive': { code: 'not-in-archive', at: AT },
  'lookup-failed': { code: 'lookup-failed', problem: { code: 'timeout' }, retryAfterSeconds: 30 },
};

const LINK: Every<LinkProblem> = {
  empty: { code: 'empty' },
  'too-long': { code: 'too-long', limit: 9 },
  'newer-version': { code: 'newer-version', version: '2' },
  damaged: { code: 'damaged' },
  'not-a-night': { code: 'not-a-night', path: 'event', message: 'expected an object' },
};

const BACKUP: Every<BackupProblem> = {
  'too-large': { code: 'too-large', limit: 9 },
  'not-json': { code: 'not-json' },
  foreign: { code: 'foreign' },
  'newer-format': { code: 'newer-format', format: 9, newest: 2 },
  damaged: { code: 'damaged', what: 'checksum' },
  'bad-record': { code: 'bad-record', table: 'machines', id: 'a', issues: [{ path: 'name', message: 'x' }] },
};

const GPX: Every<GpxProblem> = {
  'gpx-too-large': { code: 'gpx-too-large', mostBytes: 9_000_000 },
  'gpx-empty': { code: 'gpx-empty' },
  'gpx-has-doctype': { code: 'gpx-has-doctype' },
  'gpx-too-deep': { code: 'gpx-too-deep' },
  'gpx-too-many-points': { code: 'gpx-too-many-points', most: 9 },
  'gpx-not-xml': { code: 'gpx-not-xml' },
  'not-gpx': { code: 'not-gpx', root: 'kml' },
  'gpx-without-track': { code: 'gpx-without-track' },
};

const TRACK: Every<TrackProblem> = {
  'track-without-times': { code: 'track-without-times' },
  'track-without-heights': { code: 'track-without-heights' },
  'track-without-way': { code: 'track-without-way' },
};

const RIDE: Every<RideProblem> = {
  'too-few-places': { code: 'too-few-places' },
  'place-too-early': { code: 'place-too-early', place: 1 },
  'stop-negative': { code: 'stop-negative', place: 1 },
  'too-many-places': { code: 'too-many-places', limit: 9 },
  'ride-too-long': { code: 'ride-too-long', limitHours: 30 },
};

const ROSTER: Every<RosterTableProblem> = {
  empty: { code: 'empty' },
  'too-large': { code: 'too-large', limit: 9 },
  'too-many-lines': { code: 'too-many-lines', limit: 9 },
  'quotes-broken': { code: 'quotes-broken' },
  'columns-missing': { code: 'columns-missing', columns: ['box'] },
  'column-twice': { code: 'column-twice', column: 'box' },
};

const ROSTER_LINE: Every<RosterLineProblem> = {
  bib: { code: 'bib', text: '1234567890' },
  details: { code: 'details' },
  'name-missing': { code: 'name-missing' },
  'too-many-cells': { code: 'too-many-cells' },
  mains: { code: 'mains', problem: { code: 'empty' } },
  box: { code: 'box', problem: { code: 'not-a-jet', text: 'x' } },
  temperature: { code: 'temperature', problem: ENTRY['not-a-number'] },
  elevation: { code: 'elevation', problem: ENTRY['unknown-unit'] },
  'station pressure': { code: 'station pressure', problem: ENTRY['too-large'] },
  marking: { code: 'marking', text: 'x' },
  machine: { code: 'machine', problems: [] },
};

const BOX: Every<BoxTextProblem> = {
  empty: { code: 'empty' },
  'not-a-jet': { code: 'not-a-jet', text: 'x' },
  'count-too-large': { code: 'count-too-large', text: '3x400', size: 3, count: 400 },
};

const FAIR: Every<FairProblem> = {
  'no-pulls': { code: 'no-pulls', side: 'before' },
  'mixed-measures': { code: 'mixed-measures' },
  'different-distances': { code: 'different-distances' },
  'not-above-zero': { code: 'not-above-zero', side: 'after', index: 0 },
};

const LOG: Every<LogCsvProblem> = {
  'cylinder-verdict-unknown': { code: 'cylinder-verdict-unknown', line: 2, text: 'fine' },
  'cylinder-verdicts-do-not-fit': { code: 'cylinder-verdicts-do-not-fit', line: 2, verdicts: 2, mains: 3 },
  'cylinder-verdicts-disagree': { code: 'cylinder-verdicts-disagree', line: 2, leanest: 'lean' },
  'too-large': { code: 'too-large', limit: 9 },
  'too-many-lines': { code: 'too-many-lines', limit: 9 },
  empty: { code: 'empty' },
  'columns-missing': { code: 'columns-missing', columns: ['mains'] },
  'column-twice': { code: 'column-twice', column: 'mains' },
  'quotes-broken': { code: 'quotes-broken' },
  'too-many-cells': { code: 'too-many-cells', line: 2 },
  'unknown-machine': { code: 'unknown-machine', line: 2, machine: 'x' },
  'which-machine': { code: 'which-machine', line: 2, machine: 'x' },
  'id-twice': { code: 'id-twice', line: 2, id: 'x' },
  'not-a-number': { code: 'not-a-number', line: 2, column: 'temp', text: 'x' },
  'bad-value': { code: 'bad-value', line: 2, column: 'temp', reason: CONTRACT['mains-do-not-fit'] },
};

const CHART: Every<ChartProblem> = {
  empty: { code: 'empty' },
  'too-many-cells': { code: 'too-many-cells', limit: 400 },
  'bad-cell': { code: 'bad-cell', line: 2, what: 'main', text: 'x' },
  ragged: { code: 'ragged', line: 2, cells: 3, wanted: 4 },
};

const LOCATE: Readonly<Record<LocateProblem, LocateProblem>> = {
  insecure: 'insecure',
  unsupported: 'unsupported',
  denied: 'denied',
  unavailable: 'unavailable',
  timeout: 'timeout',
};

const METAR: Every<MetarProblem> = {
  empty: { code: 'empty' },
  'no-report': { code: 'no-report' },
  'several-reports': { code: 'several-reports' },
  'no-such-time': { code: 'no-such-time', group: '322255Z' },
  'too-old': { code: 'too-old', at: AT },
  nil: { code: 'nil' },
  'unknown-group': { code: 'unknown-group', group: 'A30.05' },
  'no-temperature': { code: 'no-temperature' },
  disagrees: { code: 'disagrees', group: 'A2905' },
  implausible: { code: 'implausible', group: '71/14' },
};

const told = <P>(kind: string, every: Readonly<Record<string, P>>, words: (problem: P) => string) =>
  Object.entries(every).map(([code, problem]) => [kind, code, words(problem)] as const);

const ALL = [
  ...told('air', AIR, (p) => airProblemSentence(p, US_UNITS)),
  ...told('plan', PLAN, (p) => planProblemSentence(p, { zone: VOICE.zone, runNames: ['Heat 1', 'Final'] })),
  ...told('contract', CONTRACT, (p) => contractProblemSentence(p, VOICE)),
  ...told('hardware', HARDWARE, hardwareProblemSentence),
  ...told('entry', ENTRY, (p) => entryProblemSentence(p, '-12.5')),
  ...told('clock', CLOCK, clockProblemSentence),
  ...told('paste', PASTE, pasteProblemSentence),
  ...told('weather', WEATHER, (p) => weatherProblemSentence(p, VOICE)),
  ...told('lookup', LOOKUP, (p) => lookupProblemSentence(p, VOICE)),
  ...told('metar', METAR, (p) => metarProblemSentence(p, VOICE)),
  ...told('locate', LOCATE, locateProblemWords),
  ...told('link', LINK, linkProblemSentence),
  ...told('backup', BACKUP, backupProblemSentence),
  ...told('gpx', GPX, gpxProblemSentence),
  ...told('track', TRACK, trackProblemSentence),
  ...told('ride', RIDE, (p) => rideProblemSentence(p, () => 'Cabin')),
  ...told('ride air', { hours: { start: AT, end: AT, hoursStart: AT, hoursEnd: AT } }, (p) =>
    rideAirProblemSentence({ code: 'hours-do-not-cover-ride', ...p }, VOICE.zone),
  ),
  ...told('roster', ROSTER, rosterTableSentence),
  ...told('roster line', ROSTER_LINE, (p) => rosterLineSentence(p, VOICE)),
  ...told('box', BOX, boxProblemWords),
  ...told('fair', FAIR, fairProblemSentence),
  ...told('log', LOG, (p) => csvProblemSentence(p, US_UNITS)),
  ...told('chart', CHART, chartProblemSentence),
];

/** What a sentence that tells somebody to do something begins with, after a full stop, a colon or a comma. */
const NEXT_STEP =
  /(^|[.:;,?] (or |then )?)(add|ask|check|choose|copy|export|for example|give|keep|leave|list|make|name|part|paste|plan|put|reload|rename|save|search|sort|split|take|try|type|use|write|say|empty|describe|needs the next day's)\b/i;
/** The same in the middle, where the sentence says what is needed first. */
const ENTER = /\b(Enter|Borrow|Export|A run past midnight needs)\b/;

describe('every problem there is', () => {
  it.each(ALL)('of %s (%s) is told in a whole sentence with what to do next', (_, __, sentence) => {
    expect(sentence).toMatch(/^["“A-Z0-9−].+[.?]$/);
    expect(sentence).not.toMatch(/undefined|NaN|null|\[object/);
    expect(NEXT_STEP.test(sentence) || ENTER.test(sentence)).toBe(true);
  });
});
