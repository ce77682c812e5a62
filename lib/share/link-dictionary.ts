/**
 * Text that every shared night contains, given to the compressor beforehand so that a link need not carry it.
 * Part of link version 1: a change here needs a new version, or old links turn unreadable. The commonest text stands
 * last, where references to it are shortest.
 */
export const DICTIONARY_1 = [
  '"frostPointC":"dewPointC":"seaLevelHpa":"altimeterHpa":"fuelDensity":{"offsetC":"baselineC":"ratedPowerHp":',
  '"response":{"pressureExponent":0.65,"temperatureExponent":0.65,"pressureSd":0.12,"temperatureSd":0.12,"correlation":0.7,"origin":"prior"',
  '"needle":{"groove":3,"grooves":5,"percentPerGroove":2.5},"pilot":{"jet":"jets":[],"screw":"fuel","turns":1,"leastTurns":0.5,"mostTurns":2.25,"turnsPerSize":1.25,"percentPerSize":6}',
  '"trim":{"lowest":1,"highest":"baseline":"percentPerPosition":',
  '"provenOn":"judged":"right","intakeOffsetC":0,"note":"confirmed":false,"typicalSeconds":"id":',
  '"place":{"name":"latitude":"longitude":},"swapMinutes":15,"ride":false},"machines":[{"machine":{"name":"',
  '"timezone":"America/Chicago","America/New_York","America/Anchorage","Europe/Helsinki","Europe/Oslo","elevationM":',
  '"carburettors":[{"main":400},{"main":410},{"main":420}],"jetMarking":"flow","box":[{"size":380,"count":3},{"size":390,"count":3},{"size":400,"count":3},{"size":410,"count":3},{"size":420,"count":3},{"size":430,"count":3},{"size":440,"count":3},{"size":450,"count":3}],"baseline":{"air":{"temperatureC":-7.8,"pressureHpa":990,"relativeHumidity":0.8',
  '"limits":{"leanPercent":2,"richPercent":5,"risk":0.05},"richPowerLoss":2},"fitted":{"mains":[410,410,410],"trim":null},"accepted":[{"mains":[420,420,420],"trim":null}],"made":[{"run":0,"setting":',
  '"runs":[{"name":"Heat 1","start":"2027-01-16T00:00:00.000Z","end":"2027-01-16T01:00:00.000Z","weight":1},{"name":"Round 2",',
  '"readings":[],"sharedAt":"2027-01-16T00:00:00.000Z","hours":[{"time":"2027-01-16T23:00:00.000Z","temperatureC":-12,"pressureHpa":980,"relativeHumidity":0.8},{"time":"',
].join('');
