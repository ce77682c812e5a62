// biome-ignore lint/suspicious/noExplicitAny: the fake's own JSON, whose shape is known.
type Json = any;
type Spoil = { readonly spoil: (properties: Json, feature: Json) => void; readonly code: string };

const HOUR = 3_600_000;
const value = (field: string, change: (value: number) => number) => (properties: Json) => {
  properties[field].value = change(properties[field].value);
};
const moved = (ms: number) => (properties: Json) => {
  properties.timestamp = new Date(Date.parse(properties.timestamp) + ms).toISOString();
  properties.rawMessage = '';
};
const without = (properties: Json) => {
  properties.rawMessage = '';
};

/** Observations with status 200 that contradict themselves, each with the reason it is to be left out for. */
const SPOILT = {
  'observation-fahrenheit': {
    spoil: (p) => {
      for (const field of ['temperature', 'dewpoint']) value(field, (c) => c * 1.8 + 32)(p);
    },
    code: 'report-disagrees',
  },
  'observation-fahrenheit-no-report': {
    spoil: (p) => {
      value('temperature', (c) => c * 1.8 + 32)(p);
      without(p);
    },
    code: 'humidity-disagrees',
  },
  'observation-yesterday': { spoil: moved(-24 * HOUR), code: 'too-old' },
  'observation-tomorrow': { spoil: moved(12 * HOUR), code: 'not-yet' },
  'observation-elsewhere': {
    spoil: (_, feature) => {
      feature.geometry.coordinates[1] -= 18;
    },
    code: 'other-place',
  },
  'observation-of-another-station': {
    spoil: (p) => {
      p.station = 'https://api.weather.gov/stations/KXYZ';
    },
    code: 'other-place',
  },
  'observation-height-3000': {
    spoil: (p) => value('elevation', () => 3000)(p),
    code: 'other-height',
  },
  'observation-station-pressure': {
    spoil: (p) => {
      value('barometricPressure', (pa) => pa - 4500)(p);
      without(p);
    },
    code: 'pressure-disagrees',
  },
  'observation-148-degrees': { spoil: (p) => value('temperature', () => 148.89)(p), code: 'implausible' },
  'observation-inches': { spoil: (p) => value('barometricPressure', () => 29.92)(p), code: 'implausible' },
  'observation-refused': {
    spoil: (p) => {
      p.temperature.qualityControl = 'X';
    },
    code: 'no-temperature',
  },
  'observation-null': {
    spoil: (p) => {
      p.temperature.value = null;
    },
    code: 'no-temperature',
  },
  'observation-in-kelvin': {
    spoil: (p) => {
      p.temperature.unitCode = 'wmoUnit:K';
    },
    code: 'wrong-units',
  },
  'observation-humidity-a-fraction': {
    spoil: (p) => value('relativeHumidity', (percent) => percent / 100)(p),
    code: 'humidity-disagrees',
  },
} as const satisfies Readonly<Record<string, Spoil>>;

export type SpoiltObservation = keyof typeof SPOILT;
// The keys of a constant object.
export const SPOILT_OBSERVATIONS = Object.keys(SPOILT) as SpoiltObservation[];

export function isSpoiltObservation(fault: string): fault is SpoiltObservation {
  return Object.hasOwn(SPOILT, fault);
}

export const reasonFor = (name: SpoiltObservation): string => SPOILT[name].code;

/** A good observation made to contradict itself; any other answer as it is. */
export function spoiltObservation(name: SpoiltObservation, body: string): string {
  const feature: Json = JSON.parse(body);
  if (feature.properties?.timestamp === undefined) return body;
  SPOILT[name].spoil(feature.properties, feature);
  return JSON.stringify(feature);
}
