import { describe, expect, it } from 'vitest';
import { PLACE, type PlaceDraft, readPlace } from '@/lib/fields/place/place-rows';
import { blankDraft } from '@/lib/fields/table-values';
import { US_UNITS } from '@/lib/units/choice';
import { filledSentence, missingSentence } from '@/lib/words/missing-hours';
import { triedSentence } from '@/lib/words/weather-problems';
import { chicago } from '@/tests/night/night-case';

const typed = (more: Partial<PlaceDraft>): PlaceDraft => ({
  ...blankDraft(PLACE, US_UNITS),
  name: 'Lake Orvana',
  latitude: '47.42',
  longitude: '93.61 W',
  elevation: '1320',
  ...more,
});

describe('a place as typed', () => {
  it('is its coordinates, its height and a name', () => {
    const { value } = readPlace(typed({}));
    expect(value?.place).toEqual({ name: 'Lake Orvana', latitude: 47.42, longitude: -93.61 });
    // 1 ft = 0.3048 m exactly (international foot, 1959).
    expect(value?.elevationM).toBeCloseTo(402.336, 6);
  });

  it('says of bad coordinates what is wrong and what to do', () => {
    const { errors } = readPlace(typed({ latitude: '97.42', longitude: '' }));
    expect(errors.latitude).toMatch(/not a latitude.*such as 47\.42/);
    expect(errors.longitude).toMatch(/Search the place, use your location, or type the longitude/);
  });
});

describe('hours without a value', () => {
  const at = (clock: string) => chicago('2027-01-16', clock);
  const clock = { zone: 'America/Chicago', from: at('19:00') };

  it('are told as stretches', () => {
    expect(missingSentence([at('21:00'), at('20:00'), at('23:00')], clock)).toMatch(
      /^No value for 20:00 to 21:00 and 23:00: left out\./,
    );
    expect(filledSentence([at('20:00')], clock)).toBe('Filled in from the hours beside them: 20:00.');
    expect(missingSentence([], clock)).toBe('');
  });
});

describe('services asked in vain', () => {
  it('are named with what they did, but not those that were never going to answer', () => {
    const tries = [
      { source: 'open-meteo', code: 'timeout' },
      { source: 'weather-gov', code: 'outside-area' },
      { source: 'met-norway', code: 'bad-status' },
    ];
    expect(triedSentence(tries)).toBe('Open-Meteo took too long and MET Norway had an error.');
    expect(triedSentence([{ source: 'weather-gov', code: 'outside-area' }])).toBe('');
  });
});
