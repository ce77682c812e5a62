import type { Air } from '@/lib/air/air';
import { airAt } from '@/lib/air/air-from';
import { boxFromRange } from '@/lib/carb/box';
import { LIMIT_CHOICES } from '@/lib/carb/limits';
import type { Machine } from '@/lib/carb/machine';
import { DEFAULT_RESPONSE } from '@/lib/carb/response';
import { celsiusToKelvin, fahrenheitToKelvin, hectopascalToPascal } from '@/lib/units/convert';
import { kelvinDifference, ratio } from '@/lib/units/quantity';

/** Air from the numbers a person reads: °C, station hPa, relative humidity 0 to 1. */
export function airOf(celsius: number, hectopascal = 1013.25, relativeHumidity = 0): Air {
  return airAt({
    temperature: celsiusToKelvin(celsius),
    pressure: hectopascalToPascal(hectopascal),
    relativeHumidity: ratio(relativeHumidity),
    pressureFrom: 'station',
  });
}

/** The same from °F, dry unless told. */
export function airOfFahrenheit(fahrenheit: number, hectopascal = 1013.25, relativeHumidity = 0): Air {
  return airAt({
    temperature: fahrenheitToKelvin(fahrenheit),
    pressure: hectopascalToPascal(hectopascal),
    relativeHumidity: ratio(relativeHumidity),
    pressureFrom: 'station',
  });
}

/** An invented twin: 410 mains proven at -10 °C and 990 hPa, a box of 340 to 460 by 10, two of each. */
export function raceMachine(change: Partial<Machine> = {}): Machine {
  return {
    name: 'Twin 800',
    carburettors: [{ main: 410 }, { main: 410 }],
    marking: { kind: 'flow' },
    box: boxFromRange({ lowest: 340, highest: 460, step: 10, count: 2 }),
    baselineAir: airOf(-10, 990, 0.7),
    intakeOffset: kelvinDifference(0),
    baselineIntakeOffset: kelvinDifference(0),
    trim: null,
    limits: LIMIT_CHOICES.race,
    response: DEFAULT_RESPONSE,
    pilot: null,
    needle: null,
    fuelDensity: null,
    richPowerLoss: 2,
    swapWorth: null,
    ratedPower: null,
    ...change,
  };
}
