import { describe, expect, it } from 'vitest';
import { expectOk } from '@/lib/result/result';
import { packClub, unpackClub } from '@/lib/share/club-link';
import { joinedParts, partsOf, readLinkPart } from '@/lib/share/link-parts';
import { unpackNight } from '@/lib/share/night-link';
import { nightOfRacer, type SharedClub, sharedClubLabels, sharedClubSchema } from '@/lib/share/shared-club';
import { sharedNightSchema } from '@/lib/share/shared-night';
import { codesWords, linkSizeWords } from '@/lib/words/sending';
import { seededRandom } from '@/tests/support/seeded-random';
import { acceptedEvening } from '@/tests/support/shared-evening';

/** So many racers of one evening, each with mains and an accepted plan of his own; every third in a class. */
function clubOf(count: number): SharedClub {
  const { machines, ...night } = acceptedEvening();
  const [one] = machines;
  const late = night.event.runs.slice(3);
  return sharedClubSchema.parse({
    ...night,
    racers: Array.from({ length: count }, (_, i) => ({
      ...one,
      racer: `Racer ${String.fromCharCode(65 + (i % 26))}`,
      bib: String(i + 1),
      machine: { ...one?.machine, carburettors: [{ main: 400 + (i % 4) * 10 }, { main: 410 }] },
      ...(i % 3 === 0 ? { runs: late, accepted: one?.accepted?.slice(3) } : {}),
    })),
  });
}

describe('a whole briefing in one link', () => {
  it('comes out as it went in, for one racer and for a hundred', () => {
    for (const count of [1, 6, 40, 100]) {
      const club = clubOf(count);
      expect(expectOk(unpackClub(packClub(club)))).toEqual(club);
    }
  });

  it('gives each racer a night of the own, with the runs of the own class', () => {
    const club = clubOf(4);
    const [first, second] = [0, 1].map((place) => sharedNightSchema.parse(nightOfRacer(club, place)));
    expect(first?.event.runs).toEqual(club.racers[0]?.runs);
    expect(second?.event.runs).toEqual(club.event.runs);
    expect(second?.machines).toEqual([club.racers[1]]);
    expect(nightOfRacer(club, 4)).toBeNull();
    const labels = sharedClubLabels(clubOf(60));
    expect(new Set(labels).size).toBe(60);
    expect(labels[0]).toBe('#1 Racer A');
  });

  it('is refused with a reason where a single character is another', () => {
    const payload = packClub(clubOf(3));
    const { uniform } = seededRandom(7);
    for (let i = 0; i < 60; i += 1) {
      const at = 2 + Math.floor(uniform() * (payload.length - 2));
      const other = payload[at] === 'A' ? 'B' : 'A';
      const spoiled = payload.slice(0, at) + other + payload.slice(at + 1);
      const read = unpackClub(spoiled);
      // The last character of base64url may hold bits that stand for nothing (RFC 4648, 3.5).
      if (read.ok) expect(at).toBe(payload.length - 1);
      else expect(['damaged', 'not-a-night']).toContain(read.reason.code);
    }
    expect(unpackClub('c2abc')).toMatchObject({ ok: false, reason: { code: 'newer-version' } });
    expect(unpackNight(payload)).toMatchObject({ ok: false, reason: { code: 'damaged' } });
  });
});

/** So many racers of whom no two have the same jets, box or air: nothing repeats that need not. */
function variedClub(count: number): SharedClub {
  const { racers, ...night } = clubOf(count);
  const { uniform } = seededRandom(count);
  const draw = (below: number) => Math.floor(uniform() * below);
  const varied = racers.map((racer, i) => {
    const base = 360 + 10 * draw(12);
    const mains = Array.from({ length: 1 + draw(3) }, () => base + 10 * draw(2));
    const { machine, accepted } = racer;
    const air = {
      temperatureC: -draw(250) / 10,
      pressureHpa: 960 + draw(600) / 10,
      relativeHumidity: 0.5 + draw(50) / 100,
    };
    return {
      ...racer,
      racer: `${['Ilsa', 'Juri', 'Oda', 'Tor', 'Pia'][draw(5)]} ${['Vorn', 'Tavel', 'Rask', 'Ost'][draw(4)]} ${i}`,
      machine: {
        ...machine,
        name: `Sled ${draw(900)}`,
        carburettors: mains.map((main) => ({ main })),
        box: Array.from({ length: 5 + draw(5) }, (_, j) => ({
          size: base - 30 + 10 * j,
          count: 1 + draw(3),
        })),
        baseline: { ...machine.baseline, air },
      },
      accepted: accepted?.map(() => ({ mains: mains.map((main) => main + 10 * draw(3)) })),
    };
  });
  return sharedClubSchema.parse({ ...night, racers: varied });
}

describe('the length of a link', () => {
  it('goes with the racers, far below what is read, and the page says what that means', () => {
    const [forty, hundred] = [40, 100].map((count) => packClub(variedClub(count)));
    expect(unpackClub(hundred!).ok).toBe(true);
    expect(forty!.length).toBeLessThan(6_000);
    // Of the 100,000 characters that are read.
    expect(hundred!.length).toBeLessThan(20_000);
    expect(hundred!.length).toBeLessThan(2.5 * forty!.length);
    expect(linkSizeWords(forty!, 40)).toMatch(/^40 racers in [45],\d{3} characters\. Some chat programs cut/);
    expect(linkSizeWords('x'.repeat(1_340), 40)).toBe('40 racers in 1,340 characters.');
    const codes = partsOf(forty!, 1000).length;
    expect(codesWords(codes)).toContain(`It takes ${codes} codes.`);
    expect(codesWords(codes)).toContain('A board takes one code');
    expect(codesWords(2)).not.toContain('A board');
  });
});

describe('a link over several codes', () => {
  const payload = packClub(clubOf(40));
  const parts = partsOf(payload, 1000).map((part) => readLinkPart(part)!);

  it('is whole again in any order once all of them are there, and not before', () => {
    expect(parts.length).toBeGreaterThan(1);
    expect(Math.max(...partsOf(payload, 1000).map(({ length }) => length))).toBeLessThanOrEqual(1000 + 30);
    expect(joinedParts([...parts].reverse())).toBe(payload);
    for (const missing of parts) expect(joinedParts(parts.filter((part) => part !== missing))).toBeNull();
  });

  it('takes no piece of another link for its own', () => {
    const other = partsOf(packClub(clubOf(41)), 1000).map((part) => readLinkPart(part)!);
    expect(joinedParts([other[0]!, ...parts.slice(1)])).toBeNull();
    expect(joinedParts([{ ...parts[0]!, text: other[0]!.text }, ...parts.slice(1)])).toBeNull();
    for (const wrong of ['', 'p1', 'p1.a.0.2.x', 'p1.a.3.2.x', 'p1.a.1.2.', 'p2.a.1.2.x', payload])
      expect(readLinkPart(wrong)).toBeNull();
  });
});
