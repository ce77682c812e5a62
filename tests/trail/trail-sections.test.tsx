// @vitest-environment jsdom
// Loaded late by the page: here before the clock of a test runs.
import '@/lib/time/zone-at';
import '@/lib/trail/gpx';
import { readFileSync } from 'node:fs';
import { cleanup, fireEvent, render, screen, waitFor } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { useState } from 'react';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { DialSection } from '@/components/trail/dial-section';
import { exampleParts } from '@/components/trail/example-ride';
import { readCard } from '@/components/trail/read-card';
import { readRide } from '@/components/trail/read-ride';
import { readSeasons } from '@/components/trail/read-seasons';
import { RideSection } from '@/components/trail/ride-section';
import { SeasonsSection } from '@/components/trail/seasons-section';
import { useTrailDraft } from '@/components/trail/use-trail-draft';
import { ToastProvider } from '@/components/ui/toast';
import { machineSchema } from '@/lib/contract/machine';
import { machineFromJson } from '@/lib/contract/machine-from-json';
import { draftInUnits } from '@/lib/fields/trail/draft-in-units';
import { firstDraft } from '@/lib/fields/trail/first-draft';
import type { TrailDraft } from '@/lib/fields/trail/trail-rows';
import { DEMO_TRAIL_MACHINE } from '@/lib/night/demo-trail-machine';
import { expectOk } from '@/lib/result/result';
import { keepDraft } from '@/lib/store/drafts';
import { METRIC_UNITS, type UnitChoice, US_UNITS } from '@/lib/units/choice';

const DAY = { timezone: 'America/Chicago', date: '2027-01-16' };
const machine = expectOk(machineFromJson(machineSchema.parse(DEMO_TRAIL_MACHINE)));

beforeEach(() => localStorage.clear());
afterEach(cleanup);

type Shown = { readonly invented?: boolean; readonly units?: UnitChoice; readonly rideOnly?: boolean };

function Sections({ invented = true, units = US_UNITS, rideOnly = false }: Shown) {
  const [start] = useState(() => ({ units, ...DAY }));
  const draft = useTrailDraft(start, units);
  const parts = { draft, machine, invented };
  return (
    <>
      <button type="button" onClick={draft.undo}>
        Undo
      </button>
      {rideOnly ? null : <SeasonsSection {...parts} />}
      {rideOnly ? null : <DialSection {...parts} />}
      <RideSection {...parts} />
    </>
  );
}

function open(change: (draft: TrailDraft) => TrailDraft = (draft) => draft, shown: Shown = {}) {
  keepDraft('trail', change(firstDraft({ units: shown.units ?? US_UNITS, ...DAY })));
  return render(
    <ToastProvider>
      <Sections {...shown} />
    </ToastProvider>,
  );
}

const withRide =
  (change: Partial<TrailDraft['ride']>) =>
  (draft: TrailDraft): TrailDraft => ({ ...draft, ride: { ...draft.ride, ...change } });
/** Temperatures that are nobody's example, so that a track does not ask for others. */
const OWN_COLD = [
  { clock: '07:00', temperature: '-3' },
  { clock: '13:00', temperature: '11' },
  { clock: '20:00', temperature: '5' },
];
/** One row of each list is enough to try its fields. */
const short = (draft: TrailDraft): TrailDraft =>
  withRide({ places: draft.ride.places.slice(0, 2), hours: draft.ride.hours.slice(0, 2) })({
    ...draft,
    conditions: draft.conditions.slice(0, 1),
  });
const zoneField = () => screen.getByLabelText<HTMLInputElement>('Time zone');
const call = () => screen.queryByTestId('ride-call');

describe('the zone of a ride', () => {
  it('can be taken back letter by letter, and is found again by its city', async () => {
    open(undefined, { rideOnly: true });
    expect(call()?.textContent).toContain('one setting for the whole ride');
    const user = userEvent.setup({ delay: null });
    await user.click(zoneField());
    for (const _ of DAY.timezone) {
      await user.keyboard('{Backspace}');
      expect(screen.getAllByText(/take it from the list/)).not.toHaveLength(0);
      expect(call()).toBeNull();
    }
    await user.keyboard('oslo');
    await user.click(screen.getByRole('option', { name: 'Europe/Oslo' }));
    expect(zoneField().value).toBe('Europe/Oslo');
    await waitFor(() => expect(call()).not.toBeNull());
    screen.getByText(/Clock times of Europe\/Oslo/);
  });

  it.each(['America/Chicag', '', 'Mars/Base', '__proto__'])('opens with %s kept from before', (timezone) => {
    open(withRide({ timezone }));
    expect(zoneField().value).toBe(timezone);
    screen.getByText('No answer yet.');
  });
});

/** What thumbs, gloves and clipboards put into a field. */
const NASTY = [
  '',
  ' ',
  '-',
  '−',
  '1e999',
  '-1e999',
  'NaN',
  '٣',
  '24:00',
  '99:99',
  '0',
  '999999999999',
  '°',
  '{"a":1}',
  '<b>',
  '9999-12-31',
  '\u202e\u0000',
  'x'.repeat(3000),
];

const TRACK = readFileSync('tests/fixtures/gpx/no-elevation.gpx', 'utf8');
/** The test's browser has files without their text. */
const file = (text: string, name = 'day.gpx') =>
  Object.assign(new File([text], name, { type: 'application/gpx+xml' }), { text: async () => text });
async function choose(text: string, name?: string) {
  fireEvent.change(screen.getByLabelText('GPX file'), { target: { files: [file(text, name)] } });
  await waitFor(() => expect(screen.queryByText('Reading the track…')).toBeNull());
}

describe('no keystroke', () => {
  it.each(['typed', 'track'] as const)('throws in any field of a ride that is %s', async (way) => {
    open((draft) => withRide({ way, hours: OWN_COLD })(short(draft)), { rideOnly: true });
    if (way === 'track') await choose(TRACK);
    const fields = () => [
      ...document.querySelectorAll<HTMLInputElement>('input:not([type=file]):not([type=radio])'),
    ];
    expect(fields().length).toBeGreaterThan(10);
    for (const index of fields().keys()) {
      const before = fields()[index]!.value;
      // Each field its share of them, since every one of them is worked out and drawn; all of them are read below.
      for (const value of NASTY.filter((_, i) => i % 9 === index % 9))
        fireEvent.change(fields()[index]!, { target: { value } });
      fireEvent.change(fields()[index]!, { target: { value: before } });
    }
    screen.getByRole('heading', { name: 'A ride: one setting for all of it' });
  });

  const mapped = (value: unknown, text: (before: unknown) => unknown): unknown => {
    if (Array.isArray(value)) return value.map((each) => mapped(each, text));
    if (typeof value !== 'object' || value === null) return text(value);
    return Object.fromEntries(Object.entries(value).map(([key, part]) => [key, mapped(part, text)]));
  };

  it('is one that the readers of the page cannot take', () => {
    const first = short(firstDraft({ units: US_UNITS, ...DAY }));
    let texts = 0;
    mapped(first, () => {
      texts += 1;
    });
    for (const value of NASTY)
      for (let at = 0; at < texts; at += 1) {
        let index = -1;
        const spoilt = mapped(first, (before) => {
          index += 1;
          return index === at ? value : before;
        }) as TrailDraft;
        const draft = { ...spoilt, units: first.units };
        readSeasons(draft);
        readCard(draft.card, draft.units);
        readRide({ ...draft.ride, way: 'typed' }, draft.units);
        readRide({ ...draft.ride, way: 'track' }, draft.units);
        draftInUnits(draft, METRIC_UNITS);
      }
    expect(texts).toBeGreaterThan(40);
  });

  it('is kept in a draft that does not open again', () => {
    for (const text of NASTY) {
      // A draft as a browser may bring it back: every text of it replaced.
      open((draft) => ({ ...(mapped(draft, () => text) as TrailDraft), units: draft.units }));
      screen.getByRole('heading', { name: 'A ride: one setting for all of it' });
      cleanup();
    }
  });
});

describe('a file that cannot be read', () => {
  const cut = readFileSync('tests/fixtures/gpx/malformed.gpx', 'utf8');

  it('takes the track before it away with its answer, says so, and Undo brings it back', async () => {
    open(
      withRide({
        way: 'track',
        startClock: '9:00',
        heightStart: '1000',
        heightMiddle: '3000',
        heightEnd: '900',
        hours: OWN_COLD,
      }),
    );
    expect(call()).toBeNull();
    await choose(TRACK);
    await waitFor(() => expect(call()).not.toBeNull());
    await choose(cut, 'cut.gpx');
    screen.getByText(/track before it was taken away, with its answer/);
    await waitFor(() => expect(call()).toBeNull());
    fireEvent.click(screen.getByText('Undo'));
    await waitFor(() => expect(call()).not.toBeNull());
    expect(screen.queryByText(/taken away/)).toBeNull();
  });

  it('takes nothing away where there was no track, nor coordinates that were typed', async () => {
    open(withRide({ way: 'track', air: 'forecast', latitude: '46.8', longitude: '-92.1' }));
    await choose(cut, 'cut.gpx');
    screen.getByText(/damaged, or no GPX/);
    expect(screen.queryByText(/taken away/)).toBeNull();
    expect(screen.getByLabelText<HTMLInputElement>('Latitude of the start').value).toBe('46.8');
  });
});

describe('what is said of a leg', () => {
  it('calls it by its places, never by its place in the list', () => {
    const cold = firstDraft({ units: US_UNITS, ...DAY }).ride.hours.map((hour) => ({
      ...hour,
      temperature: '-45',
    }));
    open(withRide({ hours: cold }), { rideOnly: true });
    const said = [...document.querySelectorAll('#ride li')].map(({ textContent }) => textContent ?? '');
    expect(said.filter((text) => text.startsWith('Valley cabin to Pass'))).not.toHaveLength(0);
    expect(said.filter((text) => /^\d+ |\bleg \d/.test(text))).toEqual([]);
  });
});

describe('the example’s ride beside one’s own machine', () => {
  const own = { invented: false };

  it('is said to be nobody’s, and needs no word beside the invented machine', () => {
    open();
    expect(screen.queryByText(/this ride is not/)).toBeNull();
    cleanup();
    open(undefined, own);
    screen.getByText('The machine is yours, this ride is not.');
    expect(screen.getByText(/what this page opens with/).textContent).toContain('3,000');
  });

  it.each([
    ['US', US_UNITS, METRIC_UNITS],
    ['metric', METRIC_UNITS, US_UNITS],
  ])('is known again from %s units after names, times and units have changed', (_, units, other) => {
    const first = firstDraft({ units, ...DAY });
    const renamed = {
      ...first,
      ride: {
        ...first.ride,
        places: first.ride.places.map((place) => ({ ...place, name: 'Home', clock: '09:00' })),
        hours: first.ride.hours.map((hour) => ({ ...hour, clock: '08:00' })),
      },
    };
    for (const draft of [
      renamed,
      draftInUnits(renamed, other),
      draftInUnits(draftInUnits(renamed, other), units),
    ])
      expect(exampleParts(draft.ride, draft.units)).toEqual({ places: true, hours: true });
  });

  it('has temperatures that no weather model made, which nobody knows of those one types', () => {
    const makers = ({ ride, units }: TrailDraft) =>
      new Set(readRide(ride, units).typedHours?.hours.map(({ rawModel }) => rawModel));
    for (const units of [US_UNITS, METRIC_UNITS]) {
      const first = firstDraft({ units, ...DAY });
      expect(makers(first)).toEqual(new Set([false]));
      const colder = first.ride.hours.map((hour) => ({ ...hour, temperature: '-21' }));
      expect(makers(withRide({ hours: colder })(first))).toEqual(new Set([undefined]));
    }
  });

  it('lends neither its cold to one’s own way nor its way to one’s own cold', () => {
    const heights = (draft: TrailDraft) =>
      draft.ride.places.map((place) => ({ ...place, elevation: '2000' }));
    const cold = (draft: TrailDraft) => draft.ride.hours.map((hour) => ({ ...hour, temperature: '-31' }));
    open((draft) => withRide({ places: heights(draft) })(draft), own);
    expect([screen.queryByText('How cold will it be?') !== null, call()]).toEqual([true, null]);
    cleanup();
    open((draft) => withRide({ hours: cold(draft) })(draft), own);
    expect([screen.queryByText('Where do you ride?') !== null, call()]).toEqual([true, null]);
    cleanup();
    open((draft) => withRide({ places: heights(draft), hours: cold(draft) })(draft), own);
    expect(screen.queryByText(/example/)).toBeNull();
    expect(call()).not.toBeNull();
  });

  it('lends no cold to a track either: its own hours are asked for, and say so where they cannot be had', async () => {
    open(
      withRide({
        way: 'track',
        startClock: '9:00',
        heightStart: '1000',
        heightMiddle: '3000',
        heightEnd: '900',
      }),
      own,
    );
    await choose(TRACK);
    // Recorded at a time that the test's machine does not know as past or to come: one of the two, never the example's.
    expect(screen.getByLabelText<HTMLInputElement>('Typed temperatures').checked).toBe(false);
    expect([screen.queryByText(/example/), call()]).toEqual([null, null]);
    screen.getByText('No answer yet.');
  });
});
