import { type Instant, MINUTE_MS } from '@/lib/time/instant';
import type { UnitChoice } from '@/lib/units/choice';
import { MILE_M } from '@/lib/units/convert';
import {
  formatElevation,
  formatNumber,
  formatPressure,
  formatTemperature,
  formatTemperatureStep,
  NO_BREAK_SPACE,
} from '@/lib/units/format';
import { kelvinDifference, type Metre, metre } from '@/lib/units/quantity';
import type { MetarProblem } from '@/lib/weather/metar/metar-problem';
import type { Offer } from '@/lib/weather/stations/offer';
import { OBSERVATION_DOUBTS, type ObservationDoubt } from '@/lib/weather/stations/station-problem';
import { counted, listing } from './listing';
import { dateClockText } from './times';
import type { Voice } from './voice';

/**
 * Who observed what, where from the track and how long ago, and what that says here: "KXYZ, Fake Lake: 5 mi away, 130 ft
 * higher, 15 minutes ago. Here that is 12.2 °F, give or take 3.4 °F, and station pressure 28.60 inHg."
 */
export function offerSentence(
  offer: Offer,
  { now, units }: { readonly now: Instant; readonly units: UnitChoice },
) {
  const { observation, name, reading } = offer;
  const who = name === '' ? observation.station : `${observation.station}, ${name}`;
  const where = [
    distanceText(offer.station.distance, units),
    heightText(offer, units),
    agoText(observation.at, now),
  ];
  const sd = formatTemperatureStep(kelvinDifference(reading.sd.temperature), units, 1);
  const pressure =
    reading.stationPressure === null
      ? ''
      : `, and station pressure ${formatPressure(reading.stationPressure, units)}`;
  return `${who}: ${where.join(', ')}. Here that is ${formatTemperature(reading.temperature, units)}, give or take ${sd}${pressure}.`;
}

function distanceText(distance: Metre | null, { elevation }: UnitChoice): string {
  if (distance === null) return 'distance not told';
  const [unit, length] = elevation === 'ft' ? ['mi', MILE_M] : ['km', 1000];
  const far = distance / length;
  return `${formatNumber(far, far < 9.95 ? 1 : 0)}${NO_BREAK_SPACE}${unit} away`;
}

function heightText({ station, site }: Offer, units: UnitChoice): string {
  if (station.elevation === null) return 'height not told';
  const up = station.elevation - site;
  const step = formatElevation(metre(Math.abs(up)), units);
  if (step === formatElevation(metre(0), units)) return 'as high as the track';
  return `${step} ${up > 0 ? 'higher' : 'lower'}`;
}

function agoText(at: Instant, now: Instant): string {
  const minutes = Math.max(0, Math.round((now - at) / MINUTE_MS));
  return minutes === 0 ? 'just now' : `${counted(minutes, 'minute')} ago`;
}

const SEND_ON = 'Copy it anew from where it is published.';

/** Why a report cannot be used, and what to do next. */
export function metarProblemSentence(problem: MetarProblem, { zone }: Pick<Voice, 'zone'>): string {
  switch (problem.code) {
    case 'empty':
      return 'Paste a report, such as KXYZ 162255Z 18004KT 10SM CLR M11/M14 A3005.';
    case 'no-report':
      return 'That does not begin as a report does, with a station and a time such as KXYZ 162255Z. Paste the whole METAR.';
    case 'several-reports':
      return 'These are several reports. Paste one, the newest.';
    case 'no-such-time':
      return `${problem.group} is no day and time. ${SEND_ON}`;
    case 'too-old':
      return `That report is of ${dateClockText(problem.at, zone)}, too long ago to say much about now. Paste the newest.`;
    case 'nil':
      return 'The station has nothing to report. Paste the report of another one, or read a thermometer.';
    case 'unknown-group':
      return `“${problem.group}” is no part of a report. ${SEND_ON}`;
    case 'no-temperature':
      return 'That report has no temperature. Paste the report of another station, or read a thermometer.';
    case 'disagrees':
      return `“${problem.group}” says something else than the rest of the report. ${SEND_ON}`;
    case 'implausible':
      return `“${problem.group}” is nothing that air can be. ${SEND_ON}`;
  }
}

const DOUBTS: Readonly<Record<ObservationDoubt, string>> = {
  'no-temperature': 'told no temperature',
  'too-old': 'has been silent for hours',
  'not-yet': 'told a time that has not come',
  'other-place': 'answered for another place',
  'other-height': 'answered for another height',
  'report-disagrees': 'told numbers that differ from its own report',
  'humidity-disagrees': 'told temperatures and humidity that do not fit together',
  'pressure-disagrees': 'told pressures that do not fit together',
};

/** Which stations were left out, and why: "KXYZ has been silent for hours: left out." '' where none was. */
export function stationsLeftOutSentence(
  leftOut: readonly { readonly station: string; readonly code: string }[],
): string {
  const wordsOf = (code: string) => {
    const doubt = OBSERVATION_DOUBTS.find((known) => known === code);
    return doubt === undefined ? 'gave no answer that can be used' : DOUBTS[doubt];
  };
  if (leftOut.length === 0) return '';
  return `${listing(leftOut.map(({ station, code }) => `${station} ${wordsOf(code)}`))}: left out.`;
}
