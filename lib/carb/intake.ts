import type { Air } from '@/lib/air/air';
import { airFrom } from '@/lib/air/air-from';
import { expectOk } from '@/lib/result/result';
import { type KelvinDifference, kelvin, ratio } from '@/lib/units/quantity';

/**
 * Air at the carburettor: ambient air warmed by the intake at the same pressure and the same vapour mole fraction, so
 * the dew point stays. Where cooling would pass the dew point the air is taken as just saturated.
 *
 * @param ambientAir the weather
 * @param offset carburettor air minus ambient air [K]
 */
export function intakeAir(ambientAir: Air, offset: KelvinDifference): Air {
  if (offset === 0) return ambientAir;
  const temperature = kelvin(ambientAir.temperature + offset);
  const { dewPoint } = ambientAir;
  const humidity =
    dewPoint === null || dewPoint >= temperature
      ? ({ kind: 'relative', value: ratio(dewPoint === null ? 0 : 1) } as const)
      : ({ kind: 'dew-point', value: dewPoint } as const);
  return expectOk(
    airFrom({ temperature, pressure: { kind: 'station', pressure: ambientAir.pressure }, humidity }),
  );
}
