// @vitest-environment jsdom

import { cleanup, render, screen, within } from '@testing-library/react';
import { afterEach, describe, expect, it } from 'vitest';
import { Call } from '@/components/night/call';
import { NightFigure } from '@/components/night/figure/night-figure';
import { Plate } from '@/components/night/plate/plate';
import type { MachineJson } from '@/lib/contract/machine';
import { type NightRecords, nightFrom } from '@/lib/night/night';
import { expectOk } from '@/lib/result/result';
import type { Instant } from '@/lib/time/instant';
import { textOf } from '@/tests/support/text-of';
import { BEFORE_THE_FIRST_RUN, demoRecords, type NightCase, nightAt } from './night-case';
import { NO_ACTS } from './no-acts';

afterEach(cleanup);

/** A swap as a person reads it: jets by carburettor (one number where all are alike), runs by name, times by the clock. */
type ReadSwap = {
  readonly from: string;
  readonly to: string;
  /** null: before the first run. */
  readonly after: string | null;
  readonly before: string;
  readonly window: string;
};

type Change = {
  /** °C at noon, seven in the evening, midnight and seven in the morning. */
  readonly celsius?: readonly [number, number, number, number];
  readonly machine?: Partial<MachineJson>;
};

/** The demo night in another air or with another machine. */
function nightWith({ celsius, machine = {} }: Change, now: Instant = BEFORE_THE_FIRST_RUN): NightCase {
  const demo = demoRecords(now);
  const { event } = demo;
  const hours = event.value.typed?.hours ?? [];
  const at = [0, 4, 8, hours.length - 1].map((place) => hours[place]?.time ?? '');
  const typed =
    celsius === undefined || event.value.typed === null
      ? event.value.typed
      : {
          ...event.value.typed,
          hours: celsius.map((temperatureC, i) => ({ time: at[i] ?? '', temperatureC })),
        };
  const records: NightRecords = {
    ...demo,
    event: { ...event, value: { ...event.value, typed } },
    machine: {
      ...demo.machine,
      value: { ...demo.machine.value, machine: { ...demo.machine.value.machine, ...machine } },
    },
  };
  const night = expectOk(nightFrom(records));
  return nightAt(night, now);
}

function show({ night, standing, now }: NightCase) {
  const voice = {
    zone: night.zone,
    units: { temperature: 'F', pressure: 'inHg', elevation: 'ft' },
    now,
  } as const;
  render(
    <>
      <Plate night={night} standing={standing} acts={NO_ACTS} zone={voice.zone} units={voice.units} />
      <Call standing={standing} voice={voice} />
      <NightFigure machine={night.machine} standing={standing} voice={voice} />
    </>,
  );
}

const JETS = /\d{3}(?:\.\d+)?(?: \d{3}(?:\.\d+)?)*(?:, trim \d+)?/;

/** Jets that are all alike are told as one number in a sentence, and one by one on the plate. */
function asTold(jets: string): string {
  const [sizes = '', trim] = jets.split(', ');
  const each = sizes.split(' ');
  const told = each.every((size) => size === each[0]) ? (each[0] ?? '') : sizes;
  return trim === undefined ? told : `${told}, ${trim}`;
}

/** What the page says is in the engine now. */
function inNow(): string {
  const region = screen.getByRole('region', { name: 'In now' });
  return asTold(JETS.exec(textOf(region).replace(/ ?trim/, ', trim'))?.[0] ?? '');
}

/** Row by row: a row of its own between two runs tells what is put in and when, and the next run is on it. */
function swapsInTable(): readonly ReadSwap[] {
  const table = screen.getByRole('table', { name: /^Jets for every run/ });
  const rows = within(table)
    .getAllByRole('row')
    .slice(1)
    .filter((row) => !/^Now /.test(textOf(row)));
  const read = rows.map((row) => {
    const head = textOf(within(row).getByRole('rowheader'));
    const cell = textOf(within(row).getAllByRole('cell')[0]);
    return {
      name: /^Round \d+(?= )/.exec(head)?.[0] ?? null,
      jets: new RegExp(`^${JETS.source}`).exec(cell)?.[0] ?? '',
      window: /\d\d:\d\d(?: to \d\d:\d\d)?$/.exec(head)?.[0] ?? '',
    };
  });
  const runs = read.filter(({ name }) => name !== null);
  // Jets change from run to run only where a row says so.
  expect(runs.filter(({ jets }, i) => jets !== (runs[i - 1]?.jets ?? inNow()))).toHaveLength(
    read.length - runs.length,
  );
  return read.flatMap(({ name, window }, i) => {
    const [before, next] = [read[i - 1], read[i + 1]];
    if (name !== null || next === undefined) return [];
    const swap = { from: before?.jets ?? inNow(), to: next.jets, after: before?.name ?? null };
    return [{ ...swap, before: next.name ?? '', window }];
  });
}

const ACT = new RegExp(
  `(?:Put in (${JETS.source})|Turn) ?(?:and set )?(?:trim to (\\d+) )?(?:between (Round \\d+) and|before) (Round \\d+) \\((?:by )?(\\d\\d:\\d\\d(?: to \\d\\d:\\d\\d)?)\\)`,
  'g',
);

/** The same from the sentences: each act changes what was in before it, the first one what is fitted now. */
function swapsInCall(): readonly ReadSwap[] {
  const text = textOf(screen.getByRole('region', { name: 'The call' }).querySelector('p'));
  let from = inNow();
  return [...text.matchAll(ACT)].map(([, fit, trim, after = null, before = '', window = '']) => {
    const [jets, turned] = from.split(', trim ');
    const [main, position] = [fit ?? jets ?? '', trim ?? turned];
    const to = position === undefined ? main : `${main}, trim ${position}`;
    const swap = { from, to, after, before, window };
    from = to;
    return swap;
  });
}

/** The plan object in the same terms; the clock is the browser's own, not the app's. */
function swapsOf({ plan, night }: NightCase): readonly ReadSwap[] {
  const format = new Intl.DateTimeFormat('en-GB', {
    timeZone: night.zone,
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
  });
  const setting = ({ mains, trim }: { readonly mains: readonly number[]; readonly trim: number | null }) => {
    const jets = mains.every((main) => main === mains[0]) ? String(mains[0]) : mains.join(' ');
    return trim === null ? jets : `${jets}, trim ${trim}`;
  };
  return plan.swaps.map(({ from, to, beforeRun, windowStart, latestStart }) => {
    const [first, last] = [format.format(windowStart), format.format(latestStart)];
    return {
      from: setting(from),
      to: setting(to),
      after: plan.sortedRuns[beforeRun - 1]?.name ?? null,
      before: plan.sortedRuns[beforeRun]?.name ?? '',
      window: first === last ? first : `${first} to ${last}`,
    };
  });
}

const ONE_CARBURETTOR = { carburettors: [{ main: 410 }] };

const NIGHTS: readonly (Change & { readonly title: string; readonly swaps: number })[] = [
  { title: 'the demo night, with staggered carburettors', swaps: 1 },
  { title: 'a night without a swap', swaps: 0, celsius: [-7, -7, -7, -7], machine: ONE_CARBURETTOR },
  { title: 'a night with two swaps', swaps: 2, celsius: [2, -2, -34, -40] },
  {
    title: 'a night that starts with a swap, on one carburettor',
    swaps: 1,
    celsius: [-25, -25, -25, -25],
    machine: ONE_CARBURETTOR,
  },
  {
    title: 'a night on an outside screw, turned and not swapped',
    swaps: 3,
    machine: { trim: { lowest: 0, highest: 6, baseline: 3, percentPerPosition: 1 } },
  },
];

describe('the table and the sentences alone', () => {
  it.each(NIGHTS)('tell every swap of $title', ({ swaps, ...change }) => {
    const shown = nightWith(change);
    const planned = swapsOf(shown);
    expect(planned).toHaveLength(swaps);
    show(shown);
    expect(swapsInTable()).toEqual(planned);
    // Before the first run the sentence gives the latest moment only.
    const said = planned.map((swap) => ({
      ...swap,
      window: swap.after === null ? (swap.window.split(' to ').at(-1) ?? '') : swap.window,
    }));
    expect(swapsInCall()).toEqual(said);
  });
});
