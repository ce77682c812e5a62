import type { SourceName } from '@/lib/contract/source-name';
import type { Instant } from '@/lib/time/instant';
import { formatElevation, formatNumber } from '@/lib/units/format';
import { metre } from '@/lib/units/quantity';
import type { LookupProblem, SourceProblem, SourceTry, WeatherProblem } from '@/lib/weather/problem';
import { capital, counted, listing } from './listing';
import { type Clock, dateClockText, hoursText } from './times';
import type { Voice } from './voice';

const SERVICES: Readonly<Record<SourceName, string>> = {
  'open-meteo': 'Open-Meteo',
  'met-norway': 'MET Norway',
  'weather-gov': 'the US National Weather Service',
};

/** A service as it is called to people: by its short name, or already by its own. */
export function serviceName(name: string): string {
  return new Map<string, string>(Object.entries({ ...SERVICES, shared: 'the link' })).get(name) ?? name;
}

const UNTIL_THEN = 'Type the hours yourself meanwhile.';

/** Why there is no forecast, and what to do next. */
export function weatherProblemSentence(problem: WeatherProblem, voice: Voice): string {
  switch (problem.code) {
    case 'all-sources-failed':
      return `No weather service answered (${triesText(problem.tries)}). Try again in ${secondsText(problem.retryAfterSeconds)}. ${UNTIL_THEN}`;
    case 'outside-forecast':
      return `The forecast runs from ${dateClockText(problem.hoursStart, voice.zone)} to ${dateClockText(problem.hoursEnd, voice.zone)}; the hours asked for lie outside. Ask again nearer the day, or type the hours yourself.`;
    default:
      return siteSentence(problem, voice);
  }
}

/** Why a place, an elevation or past weather could not be looked up, and what to do next. */
export function lookupProblemSentence(problem: LookupProblem, voice: Voice): string {
  switch (problem.code) {
    case 'name-too-short':
      return 'Type at least two letters of the place, or its coordinates.';
    case 'no-stations-here':
      return 'No weather station is known near this place: they are looked up in the United States only. Paste the report of an airfield instead, or read a thermometer.';
    case 'not-in-archive':
      return `There is no past weather for ${dateClockText(problem.at, voice.zone)}: it has not passed yet, or lies before the archive begins. Type the air yourself.`;
    case 'lookup-failed':
      return `The weather service did not answer (${sourceProblemText(problem.problem)}). Try again in ${secondsText(problem.retryAfterSeconds)}, or type it yourself.`;
    default:
      return siteSentence(problem, voice);
  }
}

type SiteProblem = Extract<WeatherProblem, { code: 'not-a-place' | 'elevation-out-of-range' }>;

function siteSentence(problem: SiteProblem, { units }: Voice): string {
  if (problem.code === 'elevation-out-of-range')
    return `${formatElevation(metre(problem.elevation), units)} is outside the elevations of roads and tracks. Check the number and its unit.`;
  const { latitude, longitude } = problem;
  return `${formatNumber(latitude, 4)}, ${formatNumber(longitude, 4)} is no place on earth: latitude goes from −90 to 90, longitude from −180 to 180. Check both numbers.`;
}

function triesText(tries: readonly SourceTry[]): string {
  return listing(tries.map(({ source, problem }) => `${SERVICES[source]} ${sourceProblemText(problem)}`));
}

const SOURCE_WORDS: Readonly<Record<SourceProblem['code'], string>> = {
  timeout: 'took too long',
  unreachable: 'cannot be reached',
  redirected: 'sent us elsewhere',
  'too-large': 'sent far too much',
  'not-json': 'sent something unreadable',
  'bad-status': 'had an error',
  'rate-limited': 'asked us to wait',
  resting: 'failed several times and is left alone for a while',
  busy: 'has too many requests waiting',
  'unexpected-shape': 'sent something unexpected',
  'wrong-units': 'sent other units than asked for',
  implausible: 'sent numbers that cannot be right',
  'no-pressure': 'gave no pressure',
  'no-hours': 'gave no hours',
  'outside-area': 'does not cover this place',
  'no-contact': 'wants a contact address, and none is set',
  'bad-address': 'has no usable address set',
  slow: 'was slower than the others',
  'other-place': 'answered for another place',
  'other-height': 'answered for another height',
  'other-hours': 'sent hours of another time',
  'old-issue': 'sent an old forecast',
  'future-issue': 'says its forecast was made later than now',
  'humidity-disagrees': 'sent temperatures and humidity that do not fit together',
  'pressure-disagrees': 'sent pressures that do not fit the height or the temperature',
  jump: 'sent numbers that jump as no weather does',
  flat: 'sent the same temperature for days',
  'two-values': 'gave two values at once',
};

/** What a service did, to follow its name: "took too long". */
export function sourceProblemText(problem: SourceProblem): string {
  return SOURCE_WORDS[problem.code];
}

/**
 * Which services were asked in vain, as a stored forecast knows them: "Open-Meteo took too long." Those that were never
 * going to answer for this place are left out; '' where none is left.
 */
export function triedSentence(tries: readonly { readonly source: string; readonly code: string }[]): string {
  const told = tries.filter(({ code }) => !NOT_ASKED.has(code));
  if (told.length === 0) return '';
  const known = new Map<string, string>(Object.entries(SOURCE_WORDS));
  const texts = told.map(
    ({ source, code }) => `${serviceName(source)} ${known.get(code) ?? 'did not answer'}`,
  );
  return `${capital(listing(texts))}.`;
}

/**
 * Hours that a service gave and that cannot be right, by reason, and what to do: "Open-Meteo sent numbers that jump as
 * no weather does for 20:00: left out. Check that hour with a reading." '' where none is.
 */
export function contradictionSentence(
  leftOut: readonly { readonly at: Instant; readonly code: string }[],
  { service, clock }: { readonly service: string; readonly clock: Clock },
): string {
  const known = new Map<string, string>(Object.entries(SOURCE_WORDS));
  return [...new Set(leftOut.map(({ code }) => code))]
    .map((code) => {
      const hours = leftOut.filter((one) => one.code === code).map(({ at }) => at);
      const did = known.get(code) ?? 'sent numbers that cannot be right';
      const check = hours.length === 1 ? 'that hour' : 'those hours';
      return `${service} ${did} for ${hoursText(hours, clock)}: left out. Check ${check} with a reading.`;
    })
    .join(' ');
}

const NOT_ASKED: ReadonlySet<string> = new Set(['outside-area', 'no-contact', 'bad-address']);

function secondsText(seconds: number): string {
  if (seconds <= 90) return counted(Math.max(1, Math.ceil(seconds)), 'second');
  return `${Math.ceil(seconds / 60)} minutes`;
}
