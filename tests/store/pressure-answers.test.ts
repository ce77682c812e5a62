import { describe, expect, it } from 'vitest';
import type { AirStateJson } from '@/lib/contract/air';
import { withPressureAnswer } from '@/lib/contract/pressure-answer';
import { hoursPressureDoubt } from '@/lib/contract/pressure-doubts';
import { withForecastAt } from '@/lib/night/edited-records';
import { recordWithEvent } from '@/lib/night/record-with-event';
import { withHoursPressure } from '@/lib/store/pressure-answers';
import { BEFORE_THE_FIRST_RUN, demoRecords } from '@/tests/night/night-case';

const { event } = demoRecords(BEFORE_THE_FIRST_RUN);
const odd = {
  ...event.value,
  typed: {
    ...event.value.typed!,
    hours: event.value.typed!.hours.map((hour, i) => (i === 0 ? { ...hour, pressureHpa: 1018 } : hour)),
    pressure: { kind: 'station' as const, hpa: 1017 },
  },
};
const { elevationM } = odd.event;

describe('What is said about a pressure in doubt', () => {
  it('is remembered with the hours, and asked no more', () => {
    expect(hoursPressureDoubt(odd.typed, elevationM)).toMatchObject({ likely: 'sea-level' });
    const stood = withHoursPressure(odd, 'stands').typed!;
    expect(stood).toEqual({ ...odd.typed, pressureConfirmed: true });
    expect(hoursPressureDoubt(stood, elevationM)).toBeNull();
  });

  it('turns the kind of the number said once and of those by the hour, and none of the numbers', () => {
    const { typed } = withHoursPressure(odd, 'sea-level');
    expect(typed?.pressure).toEqual({ kind: 'sea-level', hpa: 1017 });
    expect(typed?.hours[0]).toMatchObject({ seaLevelHpa: 1018 });
    expect(typed?.hours[0]).not.toHaveProperty('pressureHpa');
    expect(typed?.hours.slice(1)).toEqual(odd.typed.hours.slice(1));
  });

  it('is asked anew once the event is moved to another height, by either form', () => {
    const stood = withHoursPressure(odd, 'stands');
    const moved = { ...stood.event, elevationM: elevationM + 20 };
    const from = moved.runs.map((_, run) => run);
    expect(recordWithEvent(stood, { event: moved, from }).typed).toEqual(odd.typed);
    expect(recordWithEvent(stood, { event: stood.event, from }).typed).toEqual(stood.typed);
    const place = { name: 'Lake', latitude: 46, longitude: -92 };
    expect(withForecastAt(stood, { place, elevationM: elevationM + 20 }, 'f').typed).toEqual(odd.typed);
  });

  it('turns the kind of an air both ways', () => {
    const air = { temperatureC: -10, pressureHpa: 1022, elevationM: 300 };
    const turned = withPressureAnswer(air, 'sea-level');
    expect(turned).toEqual({
      temperatureC: -10,
      seaLevelHpa: 1022,
      elevationM: 300,
      pressureConfirmed: true,
    });
    expect(withPressureAnswer(turned, 'station')).toEqual({ ...air, pressureConfirmed: true });
  });

  it('leaves an air without a pressure alone', () => {
    const air: AirStateJson = { temperatureC: -10, elevationM: 300 };
    expect(withPressureAnswer(air, 'sea-level')).toBe(air);
  });
});
