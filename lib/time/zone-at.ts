import lookUp from '@photostructure/tz-lookup';
import { zoneExists } from './zone';

/**
 * The zone whose clocks are kept at a point, without a network. Its borders are drawn coarsely where nobody lives; null
 * where this machine does not know the zone. Degrees, north and east positive. Heavy: to be loaded when it is needed.
 */
export function zoneAt({ latitude, longitude }: { readonly latitude: number; readonly longitude: number }) {
  const zone = lookUp(latitude, longitude);
  return zoneExists(zone) ? zone : null;
}
