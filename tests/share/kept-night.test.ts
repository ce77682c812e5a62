import { describe, expect, test } from 'vitest';
import { instantFromJson } from '@/lib/contract/event-from-json';
import { nightFrom } from '@/lib/night/night';
import { expectOk } from '@/lib/result/result';
import { isHere, keptNight } from '@/lib/share/kept-night';
import { packNight, unpackNight } from '@/lib/share/night-link';
import { previewedPlans } from '@/lib/share/previewed-plans';
import type { SharedNight } from '@/lib/share/shared-night';
import { sharedNightOf } from '@/lib/share/shared-night-of';
import { racerName } from '@/lib/store/racer-event';
import { TABLE_SCHEMA } from '@/lib/store/records';
import { METRIC_UNITS } from '@/lib/units/choice';
import { callSentence } from '@/lib/words/call';
import { acceptedEvening, SHARED_AT } from '@/tests/support/shared-evening';
import { standNight } from '@/tests/support/stand-night';

function counter(): () => string {
  let count = 0;
  return () => `id-${++count}`;
}

const voice = { zone: 'America/Chicago', units: METRIC_UNITS };
const stored = <V>(id: string, value: V) => ({ id, value, revision: 1, updatedAt: '' });

/** The night page's own view of what was kept. */
function nightOf(night: SharedNight) {
  const { event, machines, forecast } = keptNight(night, counter());
  return expectOk(
    nightFrom({
      event: stored(event.id, event.value),
      machine: stored(machines[0]!.id, machines[0]!.value),
      box: null,
      forecast: forecast?.value ?? null,
      log: [],
    }),
  );
}

const previewCall = (night: SharedNight): string =>
  callSentence(expectOk(expectOk(previewedPlans(night, SHARED_AT))[0]!.standing), voice);

describe('A shared night that is kept', () => {
  test('becomes records that the store takes, each under a key of its own', () => {
    const night = {
      ...acceptedEvening(),
      machines: [...acceptedEvening().machines, ...acceptedEvening().machines],
    };
    const { event, machines, forecast } = keptNight(night, counter());
    const ids = [event.id, forecast!.id, ...machines.map(({ id }) => id)];
    expect(new Set(ids).size).toBe(4);
    expect(TABLE_SCHEMA.events.parse(event.value)).toEqual(event.value);
    expect(TABLE_SCHEMA.forecasts.parse(forecast!.value)).toEqual(forecast!.value);
    for (const { value } of machines) expect(TABLE_SCHEMA.machines.parse(value)).toEqual(value);
    expect(event.value.machineIds).toEqual(machines.map(({ id }) => id));
    expect(Object.keys(event.value.accepted)).toEqual(machines.map(({ id }) => id));
  });

  test('tells machines apart that travelled under one name, and leaves other names alone', () => {
    const [one] = acceptedEvening().machines;
    const night = { ...acceptedEvening(), machines: [one!, one!, one!] };
    const { event, machines } = keptNight(night, counter());
    const name = one!.machine.name;
    expect(machines.map(({ id, value }) => racerName(event.value, id, value))).toEqual([
      name,
      `${name} (2)`,
      `${name} (3)`,
    ]);
    expect(TABLE_SCHEMA.events.parse(event.value)).toEqual(event.value);
    expect(keptNight(acceptedEvening(), counter()).event.value.club).toBeUndefined();
  });

  test('is known again when it comes a second time, and not taken for another night of its name', () => {
    const night = acceptedEvening();
    expect(isHere(night, [])).toBe(false);
    const { event } = keptNight(night, counter());
    expect(isHere(night, [event])).toBe(true);
    const later = (time: string) => new Date(Date.parse(time) + 7 * 86_400_000).toISOString();
    const runs = night.event.runs.map((run) => ({ ...run, start: later(run.start), end: later(run.end) }));
    expect(isHere({ ...night, event: { ...night.event, runs } }, [event])).toBe(false);
  });

  test('gives the same call as its preview, whether its hours were typed or of a forecast', () => {
    for (const hoursTyped of [false, true]) {
      const night: SharedNight = { ...acceptedEvening(), hoursTyped };
      const kept = nightOf(night);
      expect(callSentence(expectOk(standNight(kept, SHARED_AT)), voice)).toBe(previewCall(night));
    }
  });

  test('keeps hours of a forecast where a newer forecast can replace them, and typed ones as typed', () => {
    const forecast = keptNight(acceptedEvening(), counter());
    expect([forecast.event.value.typed, forecast.event.value.forecastId]).toEqual([
      null,
      forecast.forecast!.id,
    ]);
    const typed = keptNight({ ...acceptedEvening(), hoursTyped: true }, counter());
    expect(typed.forecast).toBeNull();
    expect(typed.event.value.typed?.hours).toEqual(acceptedEvening().hours);
  });

  test('can be shared on, with the same call', () => {
    const night = { ...acceptedEvening(), hoursTyped: true };
    const kept = nightOf(night);
    const { plan } = expectOk(standNight(kept, SHARED_AT));
    const again = sharedNightOf({ night: kept, plan, sharedAt: SHARED_AT, exactPlace: true });
    const opened = expectOk(unpackNight(packNight(again)));
    expect(opened.event).toEqual(night.event);
    expect(opened.machines[0]!.accepted).toEqual(night.machines[0]!.accepted);
    expect(previewCall(opened)).toBe(previewCall(night));
    expect(instantFromJson(opened.sharedAt)).toBe(SHARED_AT);
  });

  test('still knows who is out', () => {
    const [one] = acceptedEvening().machines;
    const outFrom = acceptedEvening().event.runs[1]!.start;
    const kept = nightOf({ ...acceptedEvening(), hoursTyped: true, machines: [{ ...one!, outFrom }] });
    expect(kept.request.outFrom).toBe(instantFromJson(outFrom));
    const { plan } = expectOk(standNight(kept, SHARED_AT));
    const again = sharedNightOf({ night: kept, plan, sharedAt: SHARED_AT, exactPlace: true });
    expect(instantFromJson(again.machines[0]!.outFrom!)).toBe(instantFromJson(outFrom));
  });

  test('goes out with its place rounded unless its owner says otherwise', () => {
    const kept = nightOf(acceptedEvening());
    const { plan } = expectOk(standNight(kept, SHARED_AT));
    const exact = { name: 'Lake Orvana', latitude: 46.1234, longitude: -89.2345 };
    const { event } = kept.records;
    const there = { ...event, value: { ...event.value, event: { ...event.value.event, place: exact } } };
    const night = { ...kept, records: { ...kept.records, event: there } };
    const placeOf = (exactPlace: boolean) =>
      sharedNightOf({ night, plan, sharedAt: SHARED_AT, exactPlace }).event.place;
    expect(placeOf(true)).toEqual(exact);
    expect(placeOf(false)).toEqual({ name: 'Lake Orvana', latitude: 46.1, longitude: -89.2 });
  });
});
