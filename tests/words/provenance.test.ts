import { describe, expect, it } from 'vitest';
import type { HoursProvenance, Teller } from '@/lib/hours/provenance';
import { feedHoursSentence } from '@/lib/words/feed';
import { ageText, hoursSentence, hoursSentenceOnPaper, provenanceText } from '@/lib/words/provenance';
import { at, ZONE } from './plan-of';

const MADE = at('2027-01-16T16:15:00-06:00');
const NOW = at('2027-01-16T18:15:00-06:00');
const clock = { zone: ZONE, from: NOW };
const told = (more: Partial<HoursProvenance> = {}): HoursProvenance => ({
  temperatureBy: ['open-meteo'],
  typed: [],
  pressureBy: ['open-meteo'],
  pressureTyped: false,
  pressureStandard: false,
  madeAt: MADE,
  ...more,
});
const typed = [{ from: at('2027-01-16T19:00:00-06:00'), to: at('2027-01-16T23:00:00-06:00') }];
const say = (more: Partial<HoursProvenance>) => hoursSentence(told(more), NOW, clock);

describe('one hour', () => {
  const service: Teller = { origin: 'forecast', by: 'open-meteo' };
  const person: Teller = { origin: 'typed', by: null };
  it.each([
    [{ temperature: service, pressure: service }, 'forecast, Open-Meteo'],
    [
      { temperature: service, pressure: 'standard' },
      'forecast, Open-Meteo; pressure an estimate (standard atmosphere)',
    ],
    [{ temperature: person, pressure: person }, 'typed'],
    [{ temperature: person, pressure: service }, 'typed; pressure from Open-Meteo'],
    [{ temperature: service, pressure: person }, 'forecast, Open-Meteo; pressure typed'],
    [{ temperature: { origin: 'between', by: null }, pressure: person }, 'between typed hours'],
    [
      { temperature: { origin: 'filled', by: 'met-norway' }, pressure: service },
      'filled, MET Norway; pressure from Open-Meteo',
    ],
  ] as const)('%j says %s', (hour, words) => {
    expect(provenanceText({ ...hour, madeAt: null })).toBe(words);
  });
});

describe('the line beside a plan', () => {
  it('names one service once', () => expect(say({})).toBe('Hours from Open-Meteo, 2 h ago.'));

  it('says where the pressure is not the forecast’s', () => {
    expect(say({ pressureBy: [], pressureStandard: true })).toBe(
      'Hours from Open-Meteo, 2 h ago; pressure an estimate (standard atmosphere).',
    );
    expect(say({ temperatureBy: ['weather-gov'] })).toBe(
      'Hours from the US National Weather Service, 2 h ago; pressure from Open-Meteo.',
    );
    expect(say({ pressureStandard: true })).toBe(
      'Hours from Open-Meteo, 2 h ago; pressure from Open-Meteo and in part an estimate (standard atmosphere).',
    );
  });

  it('says which hours were typed, and whose the others are', () => {
    expect(say({ typed })).toBe(
      'Typed 19:00 to 23:00, the other hours from Open-Meteo, 2 h ago; pressure from Open-Meteo.',
    );
    expect(ageText(told({ typed }), NOW)).toBe('part typed, forecast fresh');
    expect(ageText(told({ typed }), at('2027-01-17T09:15:00-06:00'))).toBe('part typed, forecast too old');
  });

  it('says of typed hours that no forecast is behind them only where none is', () => {
    const alone = { temperatureBy: [], typed, pressureBy: [], pressureTyped: true, madeAt: null };
    expect(say(alone)).toBe('Hours entered by hand; no forecast behind them.');
    expect(say({ ...alone, pressureTyped: false, pressureStandard: true })).toBe(
      'Temperatures entered by hand; pressure an estimate (standard atmosphere).',
    );
    expect(say({ ...alone, pressureTyped: false, pressureBy: ['open-meteo'], madeAt: MADE })).toBe(
      'Temperatures entered by hand; pressure from Open-Meteo, 2 h ago.',
    );
  });

  it('gives a date on paper, which stands still', () => {
    expect(hoursSentenceOnPaper(told(), { zone: ZONE })).toBe('Hours from Open-Meteo, 2027-01-16 16:15.');
  });
});

describe('a calendar', () => {
  it('does not give a forecast’s name to a pressure that is an estimate', () => {
    const hours = { from: 'forecast', name: 'Open-Meteo', attribution: '' } as const;
    expect(feedHoursSentence({ ...hours, told: told() }, NOW, ZONE)).toBe('Forecast: Open-Meteo.');
    expect(
      feedHoursSentence({ ...hours, told: told({ pressureBy: [], pressureStandard: true }) }, NOW, ZONE),
    ).toBe('Forecast: Open-Meteo. Pressure an estimate (standard atmosphere).');
  });
});
