import { describe, expect, it } from 'vitest';
import { readingFromJson } from '@/lib/contract/event-from-json';
import { readReading } from '@/lib/fields/reading/read-reading';
import { READING, type ReadingDraft } from '@/lib/fields/reading/reading-rows';
import { readingTime } from '@/lib/fields/reading/reading-time';
import { blankDraft } from '@/lib/fields/table-values';
import { withoutReading, withReading } from '@/lib/night/stored-readings';
import { US_UNITS } from '@/lib/units/choice';
import { metre } from '@/lib/units/quantity';
import { questionAbout, readingText, whatMoves } from '@/lib/words/what-moved';
import { chicago, demoRecords, nightCase } from '@/tests/night/night-case';
import { plain } from '@/tests/words/plan-of';

const ZONE = 'America/Chicago';
const at1940 = chicago('2027-01-16', '19:40');
const context = { now: at1940, zone: ZONE, elevation: metre(402), id: 'r1', was: null };
const typed = (more: Partial<ReadingDraft>) => ({
  ...blankDraft(READING, US_UNITS),
  temperature: '5',
  clock: '19:40',
  ...more,
});

describe('the time of a reading', () => {
  const around = { now: chicago('2027-01-17', '00:10'), zone: ZONE, was: null };

  it('is the last moment the clock showed it: at 00:10, 23:50 was twenty minutes ago', () => {
    expect(readingTime('23:50', around)).toEqual({ ok: true, value: chicago('2027-01-16', '23:50') });
    expect(readingTime('0005', around)).toEqual({ ok: true, value: chicago('2027-01-17', '00:05') });
  });

  it('stays on its own day when a reading of yesterday is put right', () => {
    const was = chicago('2027-01-15', '19:40');
    expect(readingTime('19:30', { ...around, was })).toEqual({
      ok: true,
      value: chicago('2027-01-15', '19:30'),
    });
  });

  it('is the later of the two where the clock showed it twice and both are past', () => {
    // The clocks go back from 02:00 to 01:00 on 1 November 2026: US Energy Policy Act of 2005, section 110.
    const now = chicago('2026-11-01', '03:00');
    expect(readingTime('01:30', { now, zone: ZONE, was: null })).toEqual({
      ok: true,
      value: chicago('2026-11-01', '01:30'),
    });
  });

  it('is asked for again where it is no time', () => {
    expect(readingTime('soon', around)).toEqual({ ok: false, reason: 'not-a-clock' });
  });
});

describe('a reading as typed', () => {
  it('takes the units it is typed in', () => {
    expect(readReading(typed({ temperature: '-20 C' }), context).value).toMatchObject({
      temperatureC: -20,
      time: '2027-01-16T19:40:00-06:00',
    });
  });

  it('turns an altimeter setting into the pressure at the track', () => {
    // 1013.25 hPa set at 402 m: the standard atmosphere's 965.9 hPa (ISO 2533:1975, table for 400 m gives 966.1).
    const { value } = readReading(typed({ pressureKind: 'altimeter', pressure: '1013.25 hPa' }), context);
    expect(Math.abs((value?.pressureHpa ?? 0) - 965.9)).toBeLessThan(0.1);
  });

  it('catches a sea-level number typed as the pressure at the track of a high place', () => {
    const { value, errors } = readReading(typed({ pressureKind: 'station', pressure: '1015 hPa' }), {
      ...context,
      elevation: metre(1600),
    });
    expect(value).toBeNull();
    expect(errors.pressure).toMatch(/sea/i);
  });

  it('says what is missing, field by field', () => {
    const { errors } = readReading(typed({ temperature: '', clock: '25:00' }), context);
    expect(Object.keys(errors)).toEqual(['temperature', 'clock']);
  });
});

describe('what a reading does', () => {
  const { night, plan, now } = nightCase(at1940);
  const voice = { zone: ZONE, units: US_UNITS, now };
  const planned = { night, plan, now, voice };
  /** The demo's curve stands at 10.5 °F at 20:00 and 15 °F at 19:00; the reading is 4 K (7.2 °F) below the curve. */
  const hour = night.request.series.hours.find(({ at }) => at === chicago('2027-01-16', '19:00'));
  const json = (celsius: number) => ({
    id: 'r1',
    time: '2027-01-16T19:00:00-06:00',
    temperatureC: celsius,
    confirmed: false,
  });
  const hourC = (hour?.temperature ?? 0) - 273.15;

  it('moves the swap earlier where it is 4 K colder, and says why', () => {
    const [sentence] = whatMoves(planned, [json(hourC - 4)]);
    expect(plain(sentence ?? '')).toMatch(/°F colder\.$/);
    expect(plain(readingText(readingFromJson(json(hourC - 4), 0), planned))).toMatch(
      /at 19:00, 7 °F colder than the hours say$/,
    );
  });

  it('that agrees with the hours narrows the night, and that is said as the reason', () => {
    const sentences = whatMoves(planned, [json(hourC)]).map(plain);
    expect(sentences.join(' ')).not.toMatch(/colder|warmer/);
    const [, is, was] = /known to ±([\d.]+) °F, not ±([\d.]+) °F/.exec(sentences.at(-1) ?? '') ?? [];
    expect(Number(is)).toBeLessThan(Number(was));
  });

  it('moves nothing where nothing is read', () => {
    expect(whatMoves(planned, [])).toEqual(['No job moves: the plan stays as it is.']);
  });

  it('is questioned where it is more than 10 K off, and not where it is 9 K off', () => {
    expect(questionAbout(json(hourC + 11), planned)?.code).toBe('reading-far-off');
    expect(questionAbout(json(hourC + 9), planned)).toBeNull();
  });

  it('is put in, changed in place and taken out again without touching the others', () => {
    const record = demoRecords(at1940).event.value;
    const two = withReading(withReading(record, json(-10)), { ...json(-12), id: 'r2' });
    const changed = withReading(two, { ...json(-11), id: 'r1' });
    expect(changed.readings.map(({ id, temperatureC }) => [id, temperatureC])).toEqual([
      ['r1', -11],
      ['r2', -12],
    ]);
    expect(withoutReading(changed, 'r1').readings).toEqual([{ ...json(-12), id: 'r2' }]);
    expect(two.readings[0]?.temperatureC).toBe(-10);
  });
});
