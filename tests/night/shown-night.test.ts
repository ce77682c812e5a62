import { describe, expect, it } from 'vitest';
import { demoNight, nightOfDemo } from '@/lib/night/demo-night';
import { nightFrom } from '@/lib/night/night';
import { shownNightFromJson, shownNightJson } from '@/lib/night/shown-night';
import { expectOk } from '@/lib/result/result';
import { DEFAULT_PREFERENCES } from '@/lib/store/default-preferences';
import { instant } from '@/lib/time/instant';

const NOW = instant(Date.parse('2027-01-16T18:15:00-06:00'));
const { records } = nightOfDemo(demoNight(NOW, null));
const preferences = { ...DEFAULT_PREFERENCES, clock: '12' } as const;

describe('the night that is shown, as it is kept', () => {
  it('is planned from as it was from the records themselves', () => {
    const back = shownNightFromJson(shownNightJson({ records, preferences }));
    expect(back.preferences).toEqual(preferences);
    expect(JSON.stringify(expectOk(nightFrom(back.records)).request)).toBe(
      JSON.stringify(expectOk(nightFrom(records)).request),
    );
  });

  it('keeps no secret of a board', () => {
    const board = { id: 'b', keepSecret: 'keep-me-close', followSecret: 'follow-me', sent: '' };
    const event = { ...records.event, value: { ...records.event.value, board } };
    const json = shownNightJson({ records: { ...records, event }, preferences });
    expect(json).not.toMatch(/keep-me-close|follow-me|"board"/);
    expect(shownNightFromJson(json).records.event.value.event).toEqual(records.event.value.event);
  });
});
