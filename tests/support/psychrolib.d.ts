/** The parts of psychrolib (JavaScript, no types of its own) that tests use as a peer. */
declare module 'psychrolib' {
  interface Psychrolib {
    readonly SI: number;
    SetUnitSystem(system: number): void;
    GetHumRatioFromRelHum(celsius: number, relativeHumidity: number, pressurePa: number): number;
    GetMoistAirDensity(celsius: number, humidityRatio: number, pressurePa: number): number;
    GetSatVapPres(celsius: number): number;
    GetTDewPointFromRelHum(celsius: number, relativeHumidity: number): number;
    GetStandardAtmPressure(altitudeM: number): number;
    GetSeaLevelPressure(stationPa: number, altitudeM: number, celsius: number): number;
  }
  const psychrolib: Psychrolib;
  export default psychrolib;
}
