import { describe, expect, it } from 'vitest';
import { HOUR_MS, instant } from '@/lib/time/instant';
import { hectopascalToPascal } from '@/lib/units/convert';
import { kelvin, metre, ratio } from '@/lib/units/quantity';
import type { Copy } from '@/lib/weather/copy';
import { lentPressure } from '@/lib/weather/pressure-loan';

const at = (hour: number) => instant(Date.UTC(2027, 0, 16) + hour * HOUR_MS);

/** A copy of Open-Meteo's hours at 1000 m with the standard temperature there. */
function lender(...pressures: readonly (readonly [hour: number, hpa: number])[]): Copy {
  return {
    hours: pressures.map(([hour, hpa]) => ({
      at: at(hour),
      temperature: kelvin(281.65),
      relativeHumidity: ratio(0.5),
      pressure: hectopascalToPascal(hpa),
      pressureFrom: 'station',
      spread: null,
      origin: 'forecast',
    })),
    missing: [],
    leftOut: [],
    hasPressure: true,
    by: 'open-meteo',
    elevation: metre(1000),
    elevationFrom: 'service',
    modelElevation: null,
    issuedAt: null,
    fetchedAt: at(0),
    freshUntil: at(1),
    lastModified: null,
  };
}

const lent = (hour: number, copy: Copy | null, elevation = 1000) => {
  const { pressure, pressureBy, pressureFrom } = lentPressure(at(hour), metre(elevation), copy);
  return { hpa: pressure / 100, pressureBy, pressureFrom };
};

describe('lent pressure', () => {
  const copy = lender([0, 900], [1, 902], [7, 890]);

  it.each([
    [0, 900],
    [1, 902],
    [0.5, 901],
    [4, 896],
    [7, 890],
  ])('at hour %d lies between the hours around it: %d hPa', (hour, hpa) => {
    const { hpa: found, ...rest } = lent(hour, copy);
    expect(found).toBeCloseTo(hpa, 9);
    expect(rest).toEqual({ pressureBy: 'open-meteo', pressureFrom: 'station' });
  });

  it.each([
    [-3, 900],
    [7.5, 890],
    [31, 890],
  ])('at hour %d is held from the nearest end: %d hPa', (hour, hpa) =>
    expect(lent(hour, copy).hpa).toBeCloseTo(hpa, 9),
  );

  it.each([-25, 32])(
    'at hour %d, more than a day from any, is the standard atmosphere and says so',
    (hour) => {
      // ISO 2533:1975, table: 898.746 hPa at 1000 m.
      const { hpa, ...rest } = lent(hour, copy);
      expect(hpa).toBeCloseTo(898.746, 2);
      expect(rest).toEqual({ pressureBy: 'standard-atmosphere', pressureFrom: 'standard' });
    },
  );

  it('is moved to the height it is lent to', () => {
    // ISO 2533:1975, tables: 898.746 hPa at 1000 m is 845.560 hPa at 1500 m.
    expect(lent(0, lender([0, 898.746]), 1500).hpa).toBeCloseTo(845.56, 2);
  });

  it('without a lender is the standard atmosphere', () => {
    expect(lent(0, null, 0)).toEqual({
      hpa: 1013.25,
      pressureBy: 'standard-atmosphere',
      pressureFrom: 'standard',
    });
  });
});
