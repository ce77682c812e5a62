/** The services by the first part of their path at the stand-in, with the variable that leads the app to them. */
export const FAKE_HOSTS = {
  'open-meteo': 'OPEN_METEO_BASE_URL',
  'open-meteo-ensemble': 'OPEN_METEO_ENSEMBLE_BASE_URL',
  'open-meteo-geocoding': 'OPEN_METEO_GEOCODING_BASE_URL',
  'open-meteo-archive': 'OPEN_METEO_ARCHIVE_BASE_URL',
  'met-norway': 'METNO_BASE_URL',
  'weather-gov': 'NWS_BASE_URL',
};

/** Leads the app to a stand-in for all of its weather services, and to nothing else. */
export function fakeWeatherEnvironment(base) {
  const hosts = Object.entries(FAKE_HOSTS).map(([host, variable]) => [variable, `${base}/${host}`]);
  return { ...Object.fromEntries(hosts), WEATHER_CONTACT: 'tests@example.org' };
}
