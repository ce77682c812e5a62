/** Which lib folder may import which: everything not listed is forbidden. */
export const LIB_ARROWS: Readonly<Record<string, readonly string[]>> = {
  result: [],
  units: ['result'],
  time: ['result'],
  air: ['result', 'units'],
  hours: ['result', 'units', 'time', 'air'],
  carb: ['result', 'units', 'air'],
  power: ['result', 'units', 'air', 'carb'],
  plan: ['result', 'units', 'time', 'air', 'hours', 'carb', 'power'],
  standing: ['result', 'units', 'time', 'air', 'carb', 'plan'],
  trail: ['result', 'units', 'time', 'air', 'hours', 'carb', 'power', 'plan'],
  club: ['result', 'units', 'time', 'air', 'hours', 'carb', 'power', 'plan', 'standing'],
  after: ['result', 'units', 'time', 'air', 'hours', 'carb', 'power', 'plan', 'standing'],
  contract: ['result', 'units', 'time', 'air', 'hours', 'carb', 'power', 'plan', 'standing'],
  weather: ['result', 'units', 'time', 'air', 'hours', 'contract'],
  store: ['result', 'units', 'time', 'carb', 'contract'],
  words: [
    'result',
    'units',
    'time',
    'air',
    'hours',
    'carb',
    'power',
    'plan',
    'standing',
    'trail',
    'club',
    'after',
    'contract',
    'weather',
    'store',
  ],
  share: [
    'result',
    'units',
    'time',
    'air',
    'hours',
    'carb',
    'power',
    'plan',
    'standing',
    'trail',
    'club',
    'contract',
    'words',
    'weather',
    'store',
  ],
};

/** One door per package: the only places that may import it. */
export const PACKAGE_DOORS: Readonly<Record<string, readonly string[]>> = {
  luxon: ['lib/time/'],
  suncalc: ['lib/time/'],
  papaparse: ['lib/hours/', 'lib/store/', 'lib/share/'],
  zod: ['lib/contract/', 'lib/store/', 'lib/weather/', 'lib/share/', 'app/api/'],
  idb: ['lib/store/'],
  'ical-generator': ['lib/share/'],
  fflate: ['lib/share/'],
  uqr: ['lib/share/', 'components/'],
  '@tmcw/togeojson': ['lib/trail/'],
  swr: ['components/'],
  recharts: ['components/'],
  react: ['components/', 'app/'],
  'react-dom': ['components/', 'app/'],
  next: ['components/', 'app/', 'next.config.ts', 'proxy.ts'],
  serwist: ['components/offline/'],
};

/** Words that say nothing about what is inside. */
export const EMPTY_NAMES = /(^|\/)(utils?|helpers?|misc|common|shared|index)(\/|\.tsx?$)/;

/** Reads of the outside world that the functional core must be given instead. */
export const CORE_FOLDERS = [
  'result',
  'units',
  'time',
  'air',
  'hours',
  'carb',
  'power',
  'plan',
  'standing',
  'trail',
  'club',
  'after',
  'contract',
  'words',
  'share',
] as const;
export const OUTSIDE_READS =
  /\bDate\.now\(|\bnew Date\(\)|\bMath\.random\(|\bfetch\(|\blocalStorage\b|\bindexedDB\b|\bprocess\.env\b|DateTime\.(now|local)\(\)/;

/**
 * Which folder of components may import which. The order is the floors: a folder stands above all that it imports, so
 * no two can need each other. `ui` is open to all of them and not named.
 */
export const COMPONENT_ARROWS: Readonly<Record<string, readonly string[]>> = {
  ui: [],
  parts: [],
  about: [],
  draft: [],
  store: [],
  air: ['draft'],
  backup: ['store'],
  offline: ['store'],
  event: ['draft', 'store'],
  weather: ['draft', 'event', 'store'],
  hours: ['air', 'draft', 'event', 'store'],
  log: ['air', 'draft', 'event', 'store'],
  reading: ['draft', 'event', 'store'],
  hardware: ['draft', 'store'],
  learn: ['draft', 'log', 'store'],
  baseline: ['air', 'draft', 'event', 'hardware', 'learn', 'log', 'store'],
  machine: ['air', 'backup', 'baseline', 'draft', 'store'],
  share: ['store'],
  watch: ['reading', 'weather'],
  night: ['air', 'event', 'hours', 'machine', 'reading', 'share', 'store', 'watch', 'weather'],
  club: ['draft', 'event', 'machine', 'night', 'reading', 'store', 'watch', 'weather'],
  compare: ['air', 'draft', 'hardware', 'log', 'night', 'store'],
  trail: ['baseline', 'draft', 'event', 'night', 'store'],
  shell: ['offline', 'store'],
};
