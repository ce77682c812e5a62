import { describe, expect, it } from 'vitest';
import { seededRandom } from '@/tests/support/seeded-random';
import { Device, type Fact, runsOf, START, standApart, standingOn } from './two-devices';

/** All of them with INTERLEAVINGS=10000. */
const INTERLEAVINGS = Number(process.env.INTERLEAVINGS ?? 200);
const STEPS = 12;

const DAY = 86_400_000;
const CLOCKS: readonly ((step: number) => number)[] = [
  (step) => START + step * 1000,
  (step) => START + DAY + step * 1000,
  (step) => START - 365 * DAY + step * 1000,
  (step) => START + 365 * DAY + step * 1000,
  // Running backwards.
  (step) => START - step * 1000,
];

function ticking(clock: (step: number) => number): () => number {
  let step = 0;
  return () => {
    step += 1;
    return clock(step);
  };
}

type Draw = (below: number) => number;

/** One thing a person does on one device. */
async function act(device: Device, draw: Draw, fact: Fact, at: number): Promise<void> {
  const runs = (await device.event()).value.event.runs;
  switch (draw(11)) {
    case 0:
    case 1:
      return device.made(draw(Math.max(runs.length, 1)), fact);
    case 2:
      return device.fitted(fact, at);
    case 3:
      return device.reading(fact, at);
    case 4:
      return device.logged(fact);
    case 5:
      return device.noted(draw(3), fact);
    case 6:
      return device.unlogged(draw(3));
    case 7:
      return device.unmade(draw(3));
    case 8:
      return device.unread(draw(3));
    case 9:
      return device.renamed(`Night ${fact}`);
    default:
      return rerun(device, draw, fact);
  }
}

async function rerun(device: Device, draw: Draw, fact: Fact): Promise<void> {
  const runs = (await device.event()).value.event.runs;
  const counted = runs.map((_, i): number | null => i);
  const gone = draw(runs.length + 1);
  if (draw(2) === 0 && gone < runs.length && runs.length > 1)
    return device.rerun(
      runs.filter((_, i) => i !== gone),
      counted.filter((i) => i !== gone),
    );
  return device.rerun([...runsOf(`Round ${fact}`), ...runs], [null, ...counted]);
}

const missing = (facts: Iterable<Fact>, ...places: readonly ReadonlySet<Fact>[]): readonly Fact[] =>
  [...facts].filter((fact) => places.every((place) => !place.has(fact)));

/** Merges the other's file in and checks what must be so whatever happened before. */
async function merge(into: Device, from: Device, written: boolean): Promise<void> {
  const before = [...(await into.facts()), ...(await from.facts())];
  const aside = [...into.aside(), ...from.aside()];
  const file = await from.backup(written);
  await into.merge(from, file);
  const stands = await into.facts();
  expect(missing(before, stands, into.aside(), into.ended)).toEqual([]);
  expect(missing(aside, into.aside())).toEqual([]);
  const kept = into.store.health().setAside;
  const again = await into.merge(from, file);
  expect(again.after).toEqual(again.before);
  expect(into.store.health().setAside).toEqual(kept);
}

describe(`${INTERLEAVINGS} evenings of two devices, whose clocks are wrong by a day, a year, or run backwards`, () => {
  standApart();

  it(
    'lose nothing by a merge that does not stand in what was set aside, and end equal',
    async () => {
      let conflicts = 0;
      for (let evening = 0; evening < INTERLEAVINGS; evening++) {
        const { uniform } = seededRandom(20_270_117 + evening);
        const draw: Draw = (below) => Math.floor(uniform() * below);
        const phone = await Device.open('phone', ticking(CLOCKS[0]!));
        const laptop = await Device.open('laptop', ticking(CLOCKS[draw(CLOCKS.length)]!));
        await phone.start();
        await laptop.start();
        let fact = 3000;
        for (let step = 0; step < STEPS; step++) {
          const [one, other] = draw(2) === 0 ? [phone, laptop] : [laptop, phone];
          const chance = draw(12);
          if (chance === 0) await merge(one, other, draw(20) === 0);
          else if (chance === 1) {
            const [before, after] = (await one.undo()) ?? [];
            expect(after).toBe(before);
          } else {
            fact += 1;
            await act(one, draw, fact, CLOCKS[draw(CLOCKS.length)]!(step));
          }
        }
        const ofPhone = await phone.backup(false);
        await merge(phone, laptop, false);
        await laptop.merge(phone, ofPhone);
        expect(standingOn(await laptop.store.snapshot())).toBe(standingOn(await phone.store.snapshot()));
        conflicts += phone.aside().size > 0 ? 1 : 0;
        phone.store.close();
        laptop.store.close();
      }
      // The evenings are worth something only if the devices do get into each other's way.
      expect(conflicts).toBeGreaterThan(INTERLEAVINGS / 4);
    },
    INTERLEAVINGS * 1000,
  );
});
