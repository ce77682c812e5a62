import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MOST_LINK_CHARACTERS, packNight, unpackNight } from '@/lib/share/night-link';
import { withRoundedPlace } from '@/lib/share/rounded-place';
import { type SharedNight, sharedNightSchema } from '@/lib/share/shared-night';

const START = Date.parse('2027-01-17T01:00:00Z');
const iso = (minutes: number): string => new Date(START + minutes * 60_000).toISOString();

/** Twelve rounds, twelve sizes, two days of hours: the largest night one racer would send. */
function bigNight(): SharedNight {
  return sharedNightSchema.parse({
    event: {
      name: 'Lantern Bay ice drags',
      timezone: 'America/Chicago',
      place: { name: 'Lantern Bay', latitude: 46.78213, longitude: -92.10449 },
      elevationM: 184,
      runs: Array.from({ length: 12 }, (_, i) => ({
        name: `Round ${i + 1}`,
        start: iso(i * 25),
        end: iso(i * 25 + 6),
        typicalSeconds: 5.2,
      })),
    },
    machines: [
      {
        machine: {
          name: 'Red mod 1000',
          carburettors: [{ main: 410 }, { main: 400 }, { main: 410 }],
          box: Array.from({ length: 12 }, (_, i) => ({ size: 360 + 10 * i, count: 1 + (i % 3) })),
          baseline: {
            air: { temperatureC: -7.8, altimeterHpa: 1018.3, elevationM: 184, relativeHumidity: 0.72 },
          },
          trim: { lowest: 1, highest: 4, baseline: 2, percentPerPosition: 1.6 },
          pilot: { jet: 55, jets: [52.5, 55, 57.5], screw: 'fuel', turns: 1 },
          needle: { groove: 3, grooves: 5 },
        },
        accepted: Array.from({ length: 12 }, (_, i) => ({
          mains: i < 6 ? [410, 400, 410] : [420, 410, 420],
          trim: 2,
        })),
      },
    ],
    hours: Array.from({ length: 48 }, (_, i) => ({
      time: iso(i * 60),
      temperatureC: Math.round((-8 - 8 * Math.sin(i / 4) + ((i * 7) % 5) / 10) * 10) / 10,
      pressureHpa: Math.round((992 + 4 * Math.cos(i / 9)) * 10) / 10,
      relativeHumidity: Math.round((0.7 + 0.2 * Math.sin(i / 5)) * 100) / 100,
    })),
    readings: [{ id: 'a', time: iso(40), temperatureC: -14.5 }],
    sharedAt: iso(-240),
  });
}

/** A night packed by the version before a machine could say what a swap is worth. */
const LINK_BEFORE_WORTH =
  '1rtnx1qtWAtYdoEiEe8A5PydFARSQQBvw5WXkTGgESojoQQ0JCaxhbQ4PSizhDJY0hEkiwhgUiBSVTSHlwOwPzDA4CgyUMgLIIaqMQM7HRsRlQTOMeAJ5BHs8oVcEQBEyMyVmBYKeTYEiKA0BQzPTWpCPcKdJ1GgknB5x-hNoCzG5xQiaW6KUagE';

describe('a night in a link', () => {
  it('opens where it was made before a machine could say what a swap is worth', () => {
    const night = unpackNight(LINK_BEFORE_WORTH);
    const machine = night.ok ? night.value.machines[0]?.machine : undefined;
    expect(machine).toMatchObject({ name: 'Twin', ratedPowerHp: 165 });
    expect(machine).not.toHaveProperty('swapWorthPercent');
  });

  it('carries what a swap is worth', () => {
    const night = bigNight();
    const [first, ...rest] = night.machines;
    const machines = [{ ...first!, machine: { ...first!.machine, swapWorthPercent: 1.5 } }, ...rest];
    const sent = { ...night, machines };
    expect(unpackNight(packNight(sent))).toEqual({ ok: true, value: sent });
  });

  it('comes back as it was sent', () => {
    expect(unpackNight(packNight(bigNight()))).toEqual({ ok: true, value: bigNight() });
  });

  it('takes under 2,000 characters for one racer with 12 runs, 12 sizes and 48 hours', () => {
    expect(packNight(bigNight()).length).toBeLessThan(2_000);
  });

  it('survives being put into an address and taken out again', () => {
    const url = new URL(`https://example.org/#${packNight(bigNight())}`);
    expect(unpackNight(url.hash.slice(1)).ok).toBe(true);
  });

  it('never turns into another night when a single character changes', () => {
    const text = packNight(bigNight());
    const alphabet = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';
    let read = 0;
    for (let i = 1; i < text.length; i++) {
      const other = alphabet[(alphabet.indexOf(text[i]!) + 1 + (i % 63)) % 64]!;
      if (other === text[i]) continue;
      const result = unpackNight(text.slice(0, i) + other + text.slice(i + 1));
      if (!result.ok) continue;
      expect(result.value).toEqual(bigNight());
      read += 1;
    }
    // A changed bit can point to an equal piece of text further back: another way of writing the same night.
    expect(read / text.length).toBeLessThan(0.05);
  });

  it('answers 100,000 mutated links with a reason or a valid night, and never throws', () => {
    const text = packNight(bigNight());
    const mutation = fc.tuple(
      fc.nat(text.length - 1),
      fc.nat(12),
      fc.string({ unit: 'binary-ascii', maxLength: 12 }),
    );
    fc.assert(
      fc.property(fc.array(mutation, { minLength: 1, maxLength: 4 }), (mutations) => {
        const mutated = mutations.reduce(
          (t, [at, drop, put]) => t.slice(0, at) + put + t.slice(at + drop),
          text,
        );
        const result = unpackNight(mutated);
        if (result.ok) expect(sharedNightSchema.safeParse(result.value).success).toBe(true);
        else expect(result.reason.code).toMatch(/^(empty|too-long|newer-version|damaged|not-a-night)$/);
      }),
      { numRuns: 100_000, seed: 7 },
    );
  });

  it('says of a link from a newer version that it is newer, and of rubbish that it is damaged', () => {
    const text = packNight(bigNight());
    expect(unpackNight(`3${text.slice(1)}`)).toEqual({
      ok: false,
      reason: { code: 'newer-version', version: '3' },
    });
    expect(unpackNight('')).toEqual({ ok: false, reason: { code: 'empty' } });
    expect(unpackNight('1')).toEqual({ ok: false, reason: { code: 'damaged' } });
    expect(unpackNight('x'.repeat(MOST_LINK_CHARACTERS + 1))).toEqual({
      ok: false,
      reason: { code: 'too-long', limit: MOST_LINK_CHARACTERS },
    });
  });

  it('does not unfold a payload that would fill the memory', async () => {
    const { deflateSync } = await import('fflate');
    const bomb = deflateSync(new Uint8Array(20_000_000), { level: 9 });
    const payload = `1${Buffer.concat([new Uint8Array(4), bomb]).toString('base64url')}`;
    expect(payload.length).toBeLessThan(MOST_LINK_CHARACTERS);
    expect(unpackNight(payload)).toEqual({ ok: false, reason: { code: 'damaged' } });
  });

  it('gives no inherited property to what it reads', () => {
    const night = JSON.parse(
      JSON.stringify(bigNight()).replace('"sharedAt"', '"__proto__":{"polluted":true},"sharedAt"'),
    );
    const result = unpackNight(packNight(night));
    expect(result.ok).toBe(false);
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  });
});

describe('the place in a link', () => {
  it('is rounded to a tenth of a degree, and nothing else changes', () => {
    const rounded = withRoundedPlace(bigNight());
    expect(rounded.event.place).toEqual({ name: 'Lantern Bay', latitude: 46.8, longitude: -92.1 });
    expect({ ...rounded, event: { ...rounded.event, place: bigNight().event.place } }).toEqual(bigNight());
  });
});
