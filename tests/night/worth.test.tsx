// @vitest-environment jsdom
import { cleanup, render, screen, within } from '@testing-library/react';
import { afterEach, describe, expect, it } from 'vitest';
import { Call } from '@/components/night/call';
import { RunNumbers } from '@/components/night/tables/run-numbers';
import { SwapCountTable } from '@/components/night/tables/swap-count-table';
import type { MachineJson } from '@/lib/contract/machine';
import { nightFrom } from '@/lib/night/night';
import { expectOk } from '@/lib/result/result';
import { purposeSentence } from '@/lib/words/purpose';
import { BEFORE_THE_FIRST_RUN, demoRecords, nightAt } from './night-case';

afterEach(cleanup);

/** The demo night with something said of its machine. */
function show(machine: Partial<MachineJson>) {
  const now = BEFORE_THE_FIRST_RUN;
  const demo = demoRecords(now);
  const value = { ...demo.machine.value, machine: { ...demo.machine.value.machine, ...machine } };
  const night = expectOk(nightFrom({ ...demo, machine: { ...demo.machine, value } }));
  const { plan, standing } = nightAt(night, now);
  const units = { temperature: 'F', pressure: 'inHg', elevation: 'ft' } as const;
  const voice = { zone: night.zone, units, now };
  render(
    <>
      <Call standing={standing} voice={voice} />
      <RunNumbers plan={plan} />
      <SwapCountTable plan={plan} machineId="sled 1" />
    </>,
  );
  return plan;
}

const text = (region: string) =>
  (screen.getByRole('region', { name: region }).textContent ?? '').replaceAll('\u00a0', ' ');

describe('What a swap is worth on the night page', () => {
  it('is said in words, and a link leads to where it is changed', () => {
    const plan = show({ swapWorthPercent: 1.5, ratedPowerHp: 200 });
    expect(text('What a swap is worth')).toContain(
      `A swap must save 1.5 % power (3 hp) to be worth opening ${plan.baseline.mains.length} carburettor`,
    );
    const region = within(screen.getByRole('region', { name: 'What a swap is worth' }));
    expect(region.getByRole('link').getAttribute('href')).toBe('/machines?edit=sled%201#swap-worth');
  });

  it('is told in horsepower in every table, where power is rated', () => {
    show({ ratedPowerHp: 200 });
    expect(text('What a swap is worth')).toMatch(/\d\.\d\d % \(\d+(\.\d)? hp\)/);
    expect(text('Runs')).toMatch(/\d+\.\d % [+−]\d+(\.\d)? hp/);
  });

  it('says nothing of horsepower where none was given', () => {
    const { ratedPowerHp: _, ...machine } = demoRecords(BEFORE_THE_FIRST_RUN).machine.value.machine;
    expect(machine).not.toHaveProperty('ratedPowerHp');
    show({});
    for (const region of ['The call', 'Runs', 'What a swap is worth'])
      expect(text(region)).not.toMatch(/ hp/);
  });

  it('is not what swaps are made for: the call counts what is', () => {
    const plan = show({});
    const said = purposeSentence(plan);
    if (said === null) expect(plan.swaps.length).toBeLessThan(2);
    else expect(text('The call')).toContain(said);
    expect(text('The call')).toMatch(/for safety/);
  });
});
