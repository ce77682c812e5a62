import type { ReadingJson } from '@/lib/contract/event';
import { isoUtc } from '@/lib/time/zone';
import { kelvinToCelsius, pascalToHectopascal } from '@/lib/units/convert';
import { plainNumber } from '@/lib/units/format';
import { type Metre, metre, pascal } from '@/lib/units/quantity';
import type { ObservationsJson } from '@/lib/weather/observations-json';
import { type FromSite, type NearbyReading, nearbyReading } from '@/lib/weather/stations/nearby-reading';
import type { Observation } from '@/lib/weather/stations/observation';

/** What a station observed, as it is offered to a site. */
export type Offer = {
  readonly observation: Observation;
  /** '' where only the station's code is known. */
  readonly name: string;
  readonly station: FromSite;
  readonly site: Metre;
  readonly reading: NearbyReading;
};

/** An observation as it is offered to the site. */
export function offerOf(
  observation: Observation,
  { name, station, site }: { readonly name: string; readonly station: FromSite; readonly site: Metre },
): Offer {
  return { observation, name, station, site, reading: nearbyReading(observation, station, site) };
}

/** The reading an offer becomes once it is taken. The same observation taken twice is one reading. */
export function readingOfOffer({ observation, reading }: Offer): ReadingJson & { readonly id: string } {
  const { stationPressure, relativeHumidity, sd } = reading;
  return {
    id: `${observation.station}-${observation.at}`,
    time: isoUtc(observation.at),
    temperatureC: plainNumber(kelvinToCelsius(reading.temperature), 2),
    ...(stationPressure === null
      ? {}
      : { pressureHpa: plainNumber(pascalToHectopascal(stationPressure), 2) }),
    ...(relativeHumidity === null ? {} : { relativeHumidity: plainNumber(relativeHumidity, 4) }),
    confirmed: false,
    from: observation.station,
    temperatureSdK: plainNumber(sd.temperature, 2),
    pressureSdHpa: plainNumber(pascalToHectopascal(pascal(sd.pressure)), 2),
  };
}

/** What the stations of an answer offer to a site. */
export async function offersOf({ observations }: ObservationsJson, site: Metre): Promise<readonly Offer[]> {
  const { observationFromJson } = await import('@/lib/weather/observations-json');
  return observations.map((json) => {
    const { elevation, name, ...observation } = observationFromJson(json);
    return offerOf(observation, { name, station: { distance: metre(json.distanceM), elevation }, site });
  });
}
