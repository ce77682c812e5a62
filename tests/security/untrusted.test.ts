import { describe, expect, it } from 'vitest';
import { parameters } from '@/app/api/_http/query';
import { GET as getUnknown, POST as postUnknown } from '@/app/api/[...unknown]/route';
import { OPTIONS as optionsAir } from '@/app/api/air/route';
import { OPTIONS as optionsForecast } from '@/app/api/forecast/route';
import { sameShape } from '@/lib/fields/same-shape';
import { nightFile, readNightFile } from '@/lib/share/night-file';
import { packNight, unpackNight } from '@/lib/share/night-link';
import { clubSchema, eventRecordSchema, forecastRecordSchema } from '@/lib/store/records';
import { askPlanRaw, problemOf } from '@/tests/api/ask';
import { sharedEvening } from '@/tests/support/shared-evening';

const POISON = '"__proto__":{"polluted":true},"constructor":{"prototype":{"polluted":true}}';

/** Whether any object at all has grown a property. */
const polluted = (): boolean =>
  'polluted' in {} || 'polluted' in [] || Object.keys(Object.prototype).length > 0 || 'polluted' in (() => 0);

/** JSON text with the poison as first fields of every object in it. */
const poisoned = (value: unknown): string => JSON.stringify(value).replaceAll(/\{(?!\})/g, `{${POISON},`);

describe('fields that reach for the prototype of all objects', () => {
  it('are unknown fields in a body, a link and a file, and change nothing', async () => {
    const night = sharedEvening();
    const body = await problemOf(
      await askPlanRaw(poisoned({ event: night.event, machine: night.machines[0]?.machine })),
    );
    expect(body.status).toBe(400);
    expect(unpackNight(packNight(JSON.parse(poisoned(night))))).toMatchObject({
      ok: false,
      reason: { code: 'not-a-night' },
    });
    expect(readNightFile(poisoned(JSON.parse(nightFile(night))))).toMatchObject({ ok: false });
    expect(polluted()).toBe(false);
  });

  it('are left out where a record may have keys of any name', () => {
    const event = JSON.parse(
      `{"event":{"name":"Night","timezone":"UTC","elevationM":0,"runs":[]},"machineIds":[],"typed":null,
        "fitted":{"__proto__":{"mains":[410]}},"made":{"__proto__":[]},"accepted":{"__proto__":[]}}`,
    );
    const read = eventRecordSchema.parse(event);
    for (const part of [read.fitted, read.made, read.accepted]) {
      expect(Object.getPrototypeOf(part)).toBe(Object.prototype);
      expect(Object.keys(part)).toEqual([]);
    }
    const { racers } = clubSchema.parse(JSON.parse('{"racers":{"__proto__":{"name":"x"}}}'));
    expect(Object.getPrototypeOf(racers)).toBe(Object.prototype);
  });

  it('are plain names in the query of an address', () => {
    const given = parameters('?__proto__=x&constructor=y&lat=1');
    expect(Object.keys(given)).toEqual(['__proto__', 'constructor', 'lat']);
    expect(Object.getPrototypeOf(given)).toBe(Object.prototype);
  });

  it('make a draft left in the browser one that is not understood', () => {
    const template = { name: '', rows: [{ at: '' }] };
    expect(sameShape(template, JSON.parse('{"name":"a","rows":[]}'))).toBe(true);
    expect(sameShape(template, JSON.parse(`{"name":"a","rows":[],${POISON}}`))).toBe(false);
    expect(sameShape(template, JSON.parse('{"__proto__":{"name":"a"},"rows":[]}'))).toBe(false);
  });
});

describe('an address kept with a forecast, as a backup file may bring one', () => {
  const kept = (attributionUrl: string) =>
    forecastRecordSchema.shape.forecast.shape.attributionUrl.safeParse(attributionUrl).success;

  it('is a link to a web page, or refused', () => {
    expect(kept('https://example.org/terms')).toBe(true);
    for (const address of [
      'javascript:alert(1)',
      'data:text/html,x',
      'http://example.org',
      'https://a"onclick=',
      ' https://a',
    ])
      expect(kept(address), address).toBe(false);
  });
});

describe('a parameter that is given twice', () => {
  it('counts by its last, wherever it is read', () => {
    expect(parameters('?lat=1&lat=2')).toEqual({ lat: '2' });
  });
});

describe('an address of the API that is none', () => {
  it('is answered in JSON words by every method', async () => {
    for (const answer of [getUnknown(), postUnknown()]) {
      const problem = await problemOf(answer);
      expect([problem.status, problem.detail]).toEqual([
        404,
        'There is no such address. GET /api lists those there are.',
      ]);
    }
  });
});

describe('a browser that asks before it asks, for another site', () => {
  it('is told no, and which methods there are', async () => {
    for (const [options, allow] of [
      [optionsAir, 'POST'],
      [optionsForecast, 'GET'],
    ] as const) {
      const response = options();
      expect([response.status, response.headers.get('allow')]).toEqual([405, allow]);
      expect([...response.headers.keys()].filter((name) => name.startsWith('access-control'))).toEqual([]);
    }
  });
});
