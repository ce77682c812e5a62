type Fields = Readonly<Record<string, unknown>>;

const isFields = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/**
 * A forecast of format 1 as our API answers one. What has not the shape of one is handed on, for the schema to refuse.
 *
 * Format 1 had names of its own: `stationPressureHpa`, `spreadC`, a `source` with its name in it, tries with a bare code.
 */
export function forecastAsAnswered(record: unknown): unknown {
  if (!isFields(record)) return record;
  const { place, fetchedAt, forecast, ...unknown } = record;
  if (!isFields(place) || !isFields(forecast) || !isFields(forecast.source)) return record;
  const { source, hours, tries, ...same } = forecast;
  const { fetchedAt: servedAt, ...told } = source as Fields;
  return {
    ...unknown,
    place,
    forecast: {
      attribution: '',
      attributionUrl: null,
      issuedAt: null,
      modelElevationM: null,
      ...same,
      ...told,
      latitude: place.latitude,
      longitude: place.longitude,
      fetchedAt: servedAt ?? fetchedAt,
      hours: Array.isArray(hours) ? hours.map(hourAsAnswered) : hours,
      ...(Array.isArray(tries) ? { tries: tries.map(tryAsAnswered) } : {}),
    },
  };
}

function hourAsAnswered(hour: unknown): unknown {
  if (!isFields(hour)) return hour;
  const { stationPressureHpa, spreadC, ...same } = hour;
  return { origin: 'forecast', ...same, pressureHpa: stationPressureHpa, spreadK: spreadC ?? null };
}

function tryAsAnswered(tried: unknown): unknown {
  if (!isFields(tried)) return tried;
  const { code, ...same } = tried;
  return { ...same, problem: { code } };
}
