export const FAKE_HOSTS: Readonly<
  Record<
    | 'open-meteo'
    | 'open-meteo-ensemble'
    | 'open-meteo-geocoding'
    | 'open-meteo-archive'
    | 'met-norway'
    | 'weather-gov',
    string
  >
>;

/** Leads the app to a stand-in for all of its weather services, and to nothing else. */
export function fakeWeatherEnvironment(base: string): Record<string, string>;
