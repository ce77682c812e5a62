const LABELS: Readonly<Record<string, string>> = {
  name: 'Name of the event',
  placeName: 'Place',
  latitude: 'Latitude',
  longitude: 'Longitude',
  elevation: 'Elevation',
  timezone: 'Time zone of the track',
  date: 'Date of the first run',
  how: 'How to enter the runs',
  'series.first': 'First at',
  'series.every': 'Every',
  'series.count': 'How many',
  'series.lasting': 'Each lasting',
  'series.called': 'Called',
  runs: 'Runs',
  typicalSeconds: 'Typical time over the distance',
  swapMinutes: 'A jet swap takes',
};

const RUN_LABELS: Readonly<Record<string, string>> = {
  name: 'Name',
  start: 'Start',
  end: 'End or minutes',
  day: 'Day',
  which: 'Which of the two',
};

/** What the field of this name is called in the list of complaints. */
export function eventLabel(name: string): string {
  const run = /^runs\.(\d+)\.(\w+)$/.exec(name);
  if (run !== null) return `Run ${Number(run[1]) + 1}, ${(RUN_LABELS[run[2] ?? ''] ?? '').toLowerCase()}`;
  return LABELS[name] ?? name;
}

/** What the field of a run is called beside the run itself. */
export function runFieldLabel(field: string): string {
  return RUN_LABELS[field] ?? field;
}
