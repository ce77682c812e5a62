// @vitest-environment jsdom
import { cleanup, render, screen, within } from '@testing-library/react';
import { afterEach, describe, expect, it } from 'vitest';
import { AirTable } from '@/components/night/tables/air-table';
import { type Night, nightFrom } from '@/lib/night/night';
import { expectOk } from '@/lib/result/result';
import { planCsv } from '@/lib/share/plan-csv';
import { US_UNITS } from '@/lib/units/choice';
import { kelvinToCelsius } from '@/lib/units/convert';
import { givenWords } from '@/lib/words/given-air';
import { hourSentence } from '@/lib/words/hour-sentence';
import { marksSentence } from '@/lib/words/marks-sentence';
import { planNight } from '@/tests/support/plan-night';
import { BEFORE_THE_FIRST_RUN, chicago, demoRecords } from './night-case';

afterEach(cleanup);

const voice = { zone: 'America/Chicago', units: US_UNITS };
const spaced = (text: string | null | undefined) => (text ?? '').replaceAll('\u00a0', ' ');

/** The demo night, with 8 °F read at 18:00 where 18 °F was typed. */
function nightRead(readings: boolean) {
  const records = demoRecords(BEFORE_THE_FIRST_RUN);
  const { event } = records;
  const read = { id: 'r', time: '2027-01-16T18:00:00-06:00', temperatureC: (8 - 32) / 1.8, confirmed: false };
  const value = { ...event.value, readings: readings ? [read] : [] };
  const night: Night = expectOk(nightFrom({ ...records, event: { ...event, value } }));
  return { night, plan: expectOk(planNight(night, BEFORE_THE_FIRST_RUN)) };
}

describe('hours that a reading corrected', () => {
  it('stand in the table with what was typed and what it became', () => {
    const { plan } = nightRead(true);
    render(<AirTable plan={plan} voice={voice} />);
    const row = within(screen.getByRole('table')).getByRole('row', { name: /^18:00/ });
    const cells = within(row).getAllByRole('cell');
    expect(cells.map(({ textContent }) => spaced(textContent))).toContain('9 °F typed 18 °F');
    expect(row.textContent).toContain('typed, corrected by a reading');
  });

  it('are as typed where there is no reading', () => {
    const { plan } = nightRead(false);
    render(<AirTable plan={plan} voice={voice} />);
    expect(screen.queryByText(/corrected by a reading/)).toBeNull();
    for (const hour of plan.hours)
      expect(givenWords(hour, US_UNITS)).toMatchObject({ temperature: null, pressure: null, humidity: null });
    expect(marksSentence(plan.hours)).not.toContain('readings');
  });

  it('keep what was given, hour by hour, whatever was read', () => {
    const [read, plain] = [nightRead(true), nightRead(false)];
    expect(read.plan.hours.map(({ given }) => given)).toEqual(plain.plan.hours.map(({ given }) => given));
    read.plan.runs.forEach(({ air, givenTemperature }, i) => {
      expect(givenTemperature).toBeCloseTo(plain.plan.runs[i]?.air.temperature ?? 0, 9);
      expect(air.temperature).toBeLessThan(givenTemperature);
    });
  });

  it('are told the same way by the picture and the table of runs', () => {
    const { plan } = nightRead(true);
    const at = chicago('2027-01-16', '18:00');
    const hour = plan.hours.find((each) => each.at === at);
    if (hour === undefined) throw new Error('no hour at 18:00');
    expect(spaced(hourSentence(hour, { plan, voice, carburettor: 0 }))).toMatch(
      /^18:00: 9 °F \(typed 18 °F\)/,
    );
    expect(marksSentence(plan.hours)).toContain('as the readings moved it');
    const [head, first] = planCsv([{ name: 'Triple', plan }], { ...voice, now: at })
      .split('\r\n')
      .map((line) => line.split(',').map((cell) => cell.replace(/^"(.*)"$/, '$1')));
    const column = (name: string) => Number(first?.[head?.indexOf(name) ?? -1]);
    expect(column('temperature before readings (F)')).toBeGreaterThan(column('temperature (F)'));
    expect(column('temperature before readings (F)')).toBeCloseTo(
      kelvinToCelsius(plan.runs[0]!.givenTemperature) * 1.8 + 32,
      1,
    );
  });
});
