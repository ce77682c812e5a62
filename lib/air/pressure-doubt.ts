import { hectopascalToPascal } from '@/lib/units/convert';
import { type Metre, type Pascal, pascal } from '@/lib/units/quantity';
import type { Air, PressureKind } from './air';
import { altimeterFromStation, seaLevelFromStation } from './pressure';
import { impliedSeaLevel, OPEN_WEATHER, type SeaLevelRange, USUAL_WEATHER } from './sea-level-weather';

export type MeasuredKind = Exclude<PressureKind, 'standard'>;

/** A station pressure [Pa], the kind of number it came from, and the air it stands in. */
export type SaidPressure = Pick<Air, 'pressure' | 'pressureFrom' | 'temperature' | 'relativeHumidity'>;

/** A pressure to ask about before it is trusted: it can be true, but a slip in its kind explains it better. */
export type PressureDoubt = {
  readonly kind: MeasuredKind;
  /** The number as it was given. */
  readonly number: Pascal;
  readonly elevation: Metre;
  /** The sea-level pressure it stands for: the nearer to usual weather of the two usual reductions. */
  readonly seaLevel: Pascal;
  /** The kind that would make the number ordinary; null where none does. */
  readonly likely: 'station' | 'sea-level' | null;
  /** The sea-level pressure of the same place or another day that it does not fit; null where it is odd by itself. */
  readonly against: Pascal | null;
};

/** Kinds less far apart than this are the same air for a jet: one percent, about half a size. Judgement. */
const KINDS_DIFFER = hectopascalToPascal(10);

type Read = {
  readonly kind: MeasuredKind;
  readonly number: Pascal;
  readonly elevation: Metre;
  readonly implied: SeaLevelRange;
  /** The sea-level pressure it would stand for if it were of the other kind. */
  readonly otherwise: SeaLevelRange;
};

function read(said: SaidPressure, elevation: Metre): Read | null {
  const { pressure, pressureFrom: kind } = said;
  if (kind === 'standard') return null;
  const column = { elevation, temperature: said.temperature, relativeHumidity: said.relativeHumidity };
  const implied = impliedSeaLevel(pressure, column);
  if (kind === 'station') {
    const otherwise = { lowest: pressure, highest: pressure };
    return { kind, number: pressure, elevation, implied, otherwise };
  }
  const number =
    kind === 'altimeter' ? altimeterFromStation(pressure, elevation) : seaLevelFromStation(pressure, column);
  return { kind, number, elevation, implied, otherwise: impliedSeaLevel(number, column) };
}

const otherKind = (kind: MeasuredKind): 'station' | 'sea-level' =>
  kind === 'station' ? 'sea-level' : 'station';

/** Whether the number would be ordinary weather as the other kind, and another air. */
function isOrdinaryOtherwise({ kind, number, implied, otherwise }: Read): boolean {
  const asStation = kind === 'station' ? implied : otherwise;
  return (
    asStation.lowest - number >= KINDS_DIFFER &&
    otherwise.lowest <= USUAL_WEATHER.highest &&
    otherwise.highest >= USUAL_WEATHER.lowest
  );
}

/**
 * What there is to ask about a pressure by itself; null where nothing is. It is odd where it stands for weather that
 * hardly occurs, and already a little before that where it would be ordinary as the other kind. What one number cannot
 * tell: below about 80 m the kinds are one air; at 100 m a sea-level 1013 hPa is a plain day of 1025 hPa, and
 * only numbers from 1028 are asked about; at 200 m from 1016, at 300 m from 1004, at 400 m from 992, and from 465 m up
 * (505 m on a hot day) every usual sea-level number is.
 */
export function pressureDoubt(said: SaidPressure, elevation: Metre): PressureDoubt | null {
  const given = read(said, elevation);
  if (given === null) return null;
  const { kind, number, implied } = given;
  const ordinaryOtherwise = isOrdinaryOtherwise(given);
  const { lowest, highest } = ordinaryOtherwise ? USUAL_WEATHER : OPEN_WEATHER;
  const [high, low] = [implied.lowest > highest, implied.highest < lowest];
  if (!high && !low) return null;
  return {
    kind,
    number,
    elevation,
    seaLevel: high ? implied.lowest : implied.highest,
    likely: ordinaryOtherwise && high === (kind === 'station') ? otherKind(kind) : null,
    against: null,
  };
}

/** The sea-level pressures that several pressures of one place stand for. */
export function seaLevelOf(said: readonly SaidPressure[], elevation: Metre): SeaLevelRange {
  const ranges = said.map(({ pressure, temperature, relativeHumidity }) =>
    impliedSeaLevel(pressure, { elevation, temperature, relativeHumidity }),
  );
  return {
    lowest: pascal(Math.min(...ranges.map(({ lowest }) => lowest))),
    highest: pascal(Math.max(...ranges.map(({ highest }) => highest))),
  };
}

/** Two days differ by less than this nearly always, and by more they are asked about. Judgement. */
const DAYS_DIFFER = hectopascalToPascal(20);

/**
 * What there is to ask about a pressure beside another one: the two stand for weather far apart, and as the other kind
 * the number would fit. This finds the slip where the number alone is not odd. null where nothing is to ask.
 *
 * @param reference sea-level pressure of the other: another day, or another place
 */
export function doubtBeside(
  said: SaidPressure,
  elevation: Metre,
  reference: SeaLevelRange,
): PressureDoubt | null {
  const given = read(said, elevation);
  if (given === null) return null;
  const { kind, number, implied, otherwise } = given;
  const gap = kind === 'station' ? implied.lowest - reference.highest : reference.lowest - implied.highest;
  const gapOtherwise = Math.max(
    otherwise.lowest - reference.highest,
    reference.lowest - otherwise.highest,
    0,
  );
  if (gap < DAYS_DIFFER || gapOtherwise > DAYS_DIFFER / 2) return null;
  return {
    kind,
    number,
    elevation,
    seaLevel: kind === 'station' ? implied.lowest : implied.highest,
    likely: otherKind(kind),
    against: kind === 'station' ? reference.highest : reference.lowest,
  };
}
