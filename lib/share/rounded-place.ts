import type { SharedNight } from './shared-night';

/** About 11 km of latitude: enough for a forecast, too coarse for a driveway. */
const STEP_DEGREES = 0.1;

const round = (degrees: number): number =>
  Number((Math.round(degrees / STEP_DEGREES) * STEP_DEGREES).toFixed(1));

/** The same night with its place rounded, as it is shared unless its owner says otherwise. */
export function withRoundedPlace(night: SharedNight): SharedNight {
  const { place } = night.event;
  if (place === undefined) return night;
  const rounded = { ...place, latitude: round(place.latitude), longitude: round(place.longitude) };
  return { ...night, event: { ...night.event, place: rounded } };
}
