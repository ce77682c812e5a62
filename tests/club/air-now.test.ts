import { describe, expect, it } from 'vitest';
import { airNow } from '@/lib/club/air-now';
import { hoursProvenance } from '@/lib/hours/provenance';
import { addMinutes, HOUR_MS, instant } from '@/lib/time/instant';
import { celsiusToKelvin } from '@/lib/units/convert';
import { MINUS, NO_BREAK_SPACE } from '@/lib/units/format';
import { airWords } from '@/lib/words/air-now';
import { ageSinceText } from '@/lib/words/provenance';
import { makeBriefing } from '@/tests/support/make-briefing';
import { COLD_NIGHT, clock, DUSK, seriesOf } from '@/tests/support/plan-cases';
import { clubNight, racerOf } from './club-cases';

const UNITS = { temperature: 'C', pressure: 'hPa', elevation: 'm' } as const;
const plain = (text: string) => text.replaceAll(NO_BREAK_SPACE, ' ');

describe('the air as it stands', () => {
  const { hours } = makeBriefing([racerOf({ id: 'a' })], clubNight()).planned[0]!.plan;

  it('is that of the hour, and of the hour before', () => {
    const now = airNow(hours, clock(19))!;
    expect(now.air.temperature).toBeCloseTo(celsiusToKelvin(-8), 6);
    expect(now.hourAgo?.temperature).toBeCloseTo(celsiusToKelvin(-6), 6);
  });

  it('lies between two hours at half past, and is not told where no hours are', () => {
    const { air } = airNow(hours, clock(19.5))!;
    expect(air.temperature).toBeLessThan(celsiusToKelvin(-8));
    expect(air.temperature).toBeGreaterThan(celsiusToKelvin(-10.5));
    expect(airNow(hours, DUSK)?.hourAgo).toBeNull();
    expect(airNow(hours, instant(DUSK - HOUR_MS))).toBeNull();
    expect(airNow([], DUSK)).toBeNull();
  });

  it('is told with its drift', () => {
    const words = airWords(airNow(hours, clock(19))!, UNITS);
    expect(plain(words.temperature)).toBe(`${MINUS}8.0 °C`);
    expect(plain(words.densityAltitude)).toMatch(/^DA −[\d,]+ m$/);
    // Colder air is denser, so its density altitude is lower.
    expect(plain(words.drift)).toMatch(/^2\.0 °C colder, DA \d+ m lower than an hour ago$/);
    expect(airWords(airNow(hours, DUSK)!, UNITS).drift).toBe('');
  });

  it('is told as warmer and higher, and as the same', () => {
    const drift = (celsius: readonly number[]) => {
      const night = clubNight({ series: seriesOf([...celsius, ...Array(14).fill(-3)]) });
      const plan = makeBriefing([racerOf({ id: 'a' })], night).planned[0]!.plan;
      return plain(airWords(airNow(plan.hours, clock(18))!, UNITS).drift);
    };
    expect(drift([-6, -3])).toMatch(/^3\.0 °C warmer, DA \d+ m higher/);
    expect(drift([-3, -3])).toMatch(/^same temperature, DA 0 m/);
  });
});

it('says how old the hours are', () => {
  const told = hoursProvenance(COLD_NIGHT);
  expect(ageSinceText(told, DUSK)).toBe('fresh');
  expect(ageSinceText(told, addMinutes(DUSK, 140))).toBe('fresh: 2 h 20 min');
  expect(ageSinceText(told, clock(31))).toBe('too old: 14 h');
  expect(ageSinceText(hoursProvenance(seriesOf([-3, -4], { origin: 'typed' })), DUSK)).toBe('typed');
});
