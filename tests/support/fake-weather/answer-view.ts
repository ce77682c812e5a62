const HOUR = 3_600_000;

export type Quantity = 'temperature' | 'dewPoint' | 'humidity' | 'station' | 'sea';
/** Service's own units: °C, %, hPa. */
export type Change = (value: number, at: number) => number;

/** A good answer of any of the services, to be spoilt in the same way. */
export type AnswerView = {
  readonly kind: 'open-meteo' | 'met-norway' | 'weather-gov';
  readonly change: (quantity: Quantity, change: Change) => void;
  /** Exchanges the values of two quantities, hour by hour. */
  readonly exchange: (one: Quantity, other: Quantity) => void;
  readonly moveTimes: (ms: number) => void;
  readonly moveIssue: (to: (iso: string) => string) => void;
  readonly setElevation: (metres: number) => void;
  readonly movePlace: (
    to: (place: readonly [longitude: number, latitude: number]) => [number, number],
  ) => void;
  readonly firstHour: () => number;
  readonly text: () => string;
};

/** null for an answer without hours, such as a point's grid cell. */
export function viewOf(body: string): AnswerView | null {
  // Whatever the fake has just written: its three shapes are known, and a wrong one fails the test that uses it.
  const json = JSON.parse(body);
  if (json.hourly?.surface_pressure !== undefined) return openMeteo(json);
  if (json.properties?.timeseries !== undefined) return metNorway(json);
  if (json.properties?.temperature?.values !== undefined) return weatherGov(json);
  return null;
}

const isoOf = (at: number): string => new Date(at).toISOString().replace('.000Z', 'Z');

// biome-ignore lint/suspicious/noExplicitAny: the fake's own JSON, see above.
type Json = any;

function openMeteo(json: Json): AnswerView {
  const names = {
    temperature: 'temperature_2m',
    dewPoint: 'dew_point_2m',
    humidity: 'relative_humidity_2m',
    station: 'surface_pressure',
    sea: 'pressure_msl',
  } as const;
  const times = (): number[] => json.hourly.time;
  return {
    kind: 'open-meteo',
    change: (quantity, change) => {
      const column: number[] = json.hourly[names[quantity]];
      json.hourly[names[quantity]] = column.map((value, i) => change(value, (times()[i] ?? 0) * 1000));
    },
    exchange: (one, other) => {
      [json.hourly[names[one]], json.hourly[names[other]]] = [
        json.hourly[names[other]],
        json.hourly[names[one]],
      ];
    },
    moveTimes: (ms) => {
      json.hourly.time = times().map((time) => time + ms / 1000);
    },
    moveIssue: () => undefined,
    setElevation: (metres) => {
      json.elevation = metres;
    },
    movePlace: (to) => {
      [json.longitude, json.latitude] = to([json.longitude, json.latitude]);
    },
    firstHour: () => (times()[0] ?? 0) * 1000,
    text: () => JSON.stringify(json),
  };
}

function metNorway(json: Json): AnswerView {
  const names = {
    temperature: ['air_temperature', 'air_temperature_percentile_10', 'air_temperature_percentile_90'],
    dewPoint: ['dew_point_temperature'],
    humidity: ['relative_humidity'],
    station: [],
    sea: ['air_pressure_at_sea_level'],
  } as const;
  const rows = (): Json[] => json.properties.timeseries;
  return {
    kind: 'met-norway',
    change: (quantity, change) => {
      for (const { time, data } of rows())
        for (const name of names[quantity])
          data.instant.details[name] = change(data.instant.details[name], Date.parse(time));
    },
    exchange: (one, other) => {
      const [a, b] = [names[one][0], names[other][0]];
      if (a === undefined || b === undefined) return;
      for (const { data } of rows()) {
        const { details } = data.instant;
        [details[a], details[b]] = [details[b], details[a]];
      }
    },
    moveTimes: (ms) => {
      for (const row of rows()) row.time = isoOf(Date.parse(row.time) + ms);
    },
    moveIssue: (to) => {
      json.properties.meta.updated_at = to(json.properties.meta.updated_at);
    },
    setElevation: (metres) => {
      json.geometry.coordinates[2] = metres;
    },
    movePlace: (to) => {
      const [longitude, latitude, altitude] = json.geometry.coordinates;
      json.geometry.coordinates = [...to([longitude, latitude]), altitude];
    },
    firstHour: () => Date.parse(rows()[0]?.time),
    text: () => JSON.stringify(json),
  };
}

function weatherGov(json: Json): AnswerView {
  const { properties } = json;
  const names = { temperature: 'temperature', dewPoint: 'dewpoint', humidity: 'relativeHumidity' } as const;
  const layerOf = (quantity: Quantity): Json =>
    quantity === 'station' || quantity === 'sea' ? { values: [] } : properties[names[quantity]];
  const layers = Object.values(names).map((name) => properties[name]);
  // Runs of equal hours become hours, so that a single one can be wrong.
  for (const layer of layers)
    layer.values = layer.values.flatMap(({ validTime, value }: { validTime: string; value: number }) => {
      const [from = '', length = ''] = validTime.split('/');
      const [, days, hours] = /^P(?:(\d+)D)?(?:T(\d+)H)?$/.exec(length) ?? [];
      const count = Number(days ?? 0) * 24 + Number(hours ?? 0);
      return Array.from({ length: count }, (_, i) => ({
        validTime: `${isoOf(Date.parse(from) + i * HOUR)}/PT1H`,
        value,
      }));
    });
  const startOf = ({ validTime }: { validTime: string }): number => Date.parse(validTime.split('/')[0] ?? '');
  return {
    kind: 'weather-gov',
    change: (quantity, change) => {
      for (const run of layerOf(quantity).values) run.value = change(run.value, startOf(run));
    },
    exchange: (one, other) => {
      const [a, b] = [layerOf(one), layerOf(other)];
      [a.values, b.values] = [b.values, a.values];
    },
    moveTimes: (ms) => {
      for (const layer of layers)
        for (const run of layer.values) run.validTime = `${isoOf(startOf(run) + ms)}/PT1H`;
    },
    moveIssue: (to) => {
      properties.updateTime = to(properties.updateTime);
    },
    setElevation: (metres) => {
      properties.elevation.value = metres;
    },
    movePlace: (to) => {
      json.geometry.coordinates = json.geometry.coordinates.map((ring: [number, number][]) => ring.map(to));
    },
    firstHour: () => Math.min(...properties.temperature.values.map(startOf)),
    text: () => JSON.stringify(json),
  };
}
