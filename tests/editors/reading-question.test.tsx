// @vitest-environment jsdom
import { cleanup, render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { ReadingForm } from '@/components/reading/reading-form';
import type { ReadingJson } from '@/lib/contract/event';
import { readingFromJson } from '@/lib/contract/event-from-json';
import { asSeaLevel, seaLevelMeant } from '@/lib/night/sea-level-reading';
import { expectOk } from '@/lib/result/result';
import { METRIC_UNITS } from '@/lib/units/choice';
import { planNight } from '@/tests/support/plan-night';
import { chicago, nightCase } from '../night/night-case';

beforeEach(() => localStorage.clear());
afterEach(cleanup);

/** The demo night, 968 hPa typed as station pressure at 402 m. */
const now = chicago('2027-01-16', '19:40');
const planned = { ...nightCase(now), voice: { zone: 'America/Chicago', units: METRIC_UNITS } };

type Kind = 'Station' | 'Sea level' | 'Altimeter setting';

async function read(kind: Kind, pressure: string) {
  const user = userEvent.setup({ delay: null });
  const saved = vi.fn<(reading: ReadingJson) => Promise<undefined>>(async () => undefined);
  render(
    <ReadingForm
      planned={planned}
      units={METRIC_UNITS}
      id="r1"
      initial={null}
      onSave={saved}
      onCancel={() => {}}
    />,
  );
  await user.type(screen.getByLabelText('Temperature'), '-11');
  await user.click(screen.getByText('Pressure and humidity'));
  await user.click(screen.getByRole('radio', { name: kind }));
  await user.type(
    screen.getByLabelText(/^(Station pressure|Sea-level pressure|Altimeter setting)$/, {
      selector: '[type=text]',
    }),
    pressure,
  );
  await user.click(screen.getByRole('button', { name: 'Use this reading' }));
  // Until then it says that it is saving.
  await screen.findByRole('button', { name: 'Use this reading' });
  const press = (name: string) => user.click(screen.getByRole('button', { name }));
  return { saved, press };
}

describe('a barometer reading that differs by just the reduction to sea level', () => {
  it('is asked about; one press takes it as the sea-level number it is', async () => {
    const { saved, press } = await read('Station', '1019');
    expect(saved).not.toHaveBeenCalled();
    expect(screen.getByRole('alert').textContent).toMatch(/just what a sea-level number is above station/);
    await press('It is a sea-level number');
    // 1019 hPa at sea level is 968 hPa at 402 m and -11 °C (WMO-No. 8, vol. I, eq. 3.2), within what the hours say.
    expect(saved).toHaveBeenCalledTimes(1);
    expect(Math.abs((saved.mock.calls[0]?.[0].pressureHpa ?? 0) - 967.6)).toBeLessThan(0.5);
  });

  it('is kept as typed and confirmed where the person stands by it', async () => {
    const { saved, press } = await read('Station', '1019');
    await press('It is right as typed: use it');
    expect(saved.mock.calls[0]?.[0]).toMatchObject({ pressureHpa: 1019, confirmed: true });
  });

  it('and was reduced once too often is taken as station pressure', async () => {
    const { saved, press } = await read('Sea level', '968');
    await press('It is station pressure');
    expect(saved.mock.calls[0]?.[0]).toMatchObject({ pressureHpa: 968 });
  });

  it('of the right kind is taken at once', async () => {
    const { saved } = await read('Sea level', '1019');
    expect(saved).toHaveBeenCalledTimes(1);
  });

  it('in the list of readings can still be turned into what it is', () => {
    const json: ReadingJson = {
      id: 'r1',
      time: '2027-01-16T19:40:00-06:00',
      temperatureC: -11,
      pressureHpa: 1019,
      confirmed: false,
    };
    const planOf = (reading: ReadingJson) => {
      const request = { ...planned.night.request, readings: [readingFromJson(reading, 0)] };
      return { ...planned, plan: expectOk(planNight({ ...planned.night, request }, now)) };
    };
    expect(seaLevelMeant(planOf(json), 'r1')).toBe(true);
    const turned = asSeaLevel(json, planned);
    expect(seaLevelMeant(planOf(turned), 'r1')).toBe(false);
    expect(planOf(turned).plan.warnings).not.toContainEqual(expect.objectContaining({ readingId: 'r1' }));
  });
});
