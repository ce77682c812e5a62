import { describe, expect, it } from 'vitest';
import { expectOk } from '@/lib/result/result';
import type { LogRecord, Stored } from '@/lib/store/records';
import { withTakenBack } from '@/lib/store/taken-back';
import { seededRandom } from '@/tests/support/seeded-random';
import { Device, type Fact, START, standApart } from './two-devices';

const EVENINGS = Number(process.env.REMOVALS ?? 40);
const STEPS = 30;

/** What somebody did to one record: it is there by a making, gone by every removal that no later making knew of. */
type Deed = { readonly id: string; readonly kind: 'made' | 'removed'; readonly knew: ReadonlySet<Deed> };

/** A device, and what a model without traces says that it knows. */
type Known = { readonly device: Device; deeds: Set<Deed>; removed?: Stored<LogRecord> | undefined };
type Kept = {
  readonly from: Known;
  readonly file: Awaited<ReturnType<Device['backup']>>;
  readonly deeds: Set<Deed>;
};

const of = (deeds: ReadonlySet<Deed>, id: string): readonly Deed[] =>
  [...deeds].filter((deed) => deed.id === id);

function standing(deeds: ReadonlySet<Deed>): readonly string[] {
  const ids = [...new Set([...deeds].map(({ id }) => id))];
  return ids.filter((id) => {
    const [made, removed] = [
      of(deeds, id).filter(({ kind }) => kind === 'made'),
      of(deeds, id).filter(({ kind }) => kind === 'removed'),
    ];
    return made.length > 0 && removed.every((deed) => made.some(({ knew }) => knew.has(deed)));
  });
}

const done = (known: Known, id: string, kind: Deed['kind']): void => {
  known.deeds = new Set([...known.deeds, { id, kind, knew: known.deeds }]);
};

type Draw = (below: number) => number;

/** One thing that a person does to the log of one device. */
async function work(known: Known, draw: Draw, fact: Fact): Promise<void> {
  const { device } = known;
  const entries = await device.store.list('log');
  const entry = entries[draw(Math.max(entries.length, 1))];
  switch (draw(5)) {
    case 0:
      // Few records: then devices do get into each other's way.
      if (entries.length > 1) return;
      await device.logged(fact);
      return done(known, `l${fact}`, 'made');
    case 1:
      return entry === undefined ? undefined : device.noted(entries.indexOf(entry), fact);
    case 2: {
      if (entry === undefined) return;
      await device.unlogged(entries.indexOf(entry));
      known.removed = entry;
      return done(known, entry.id, 'removed');
    }
    case 3: {
      // Undo is pressed, some time after.
      const { removed } = known;
      if (removed === undefined || !(await device.store.restore('log', removed)).ok) return;
      known.removed = undefined;
      return done(known, removed.id, 'made');
    }
    default: {
      const asides = device.store.health().setAside.filter(({ path }) => path === '');
      const aside = asides[draw(Math.max(asides.length, 1))];
      if (aside === undefined || (await device.store.get('log', aside.id)) !== null) return;
      expectOk(await device.store.rewrite((current) => withTakenBack(current, aside) ?? current));
      return done(known, aside.id, 'made');
    }
  }
}

async function keep(from: Known, written: boolean): Promise<Kept> {
  return { from, file: await from.device.backup(written), deeds: from.deeds };
}

/** Takes a file in, of today or of earlier, and checks that what was removed knowingly did not come back. */
async function takeIn(into: Known, { from, file, deeds }: Kept): Promise<void> {
  const { device } = into;
  const said = [...(await device.facts()), ...file.tables.log.map(({ value }) => Number(value.note))];
  await device.merge(from.device, file);
  into.deeds = new Set([...into.deeds, ...deeds]);
  const ids = (await device.store.list('log')).map(({ id }) => id);
  expect([...ids].sort()).toEqual([...standing(into.deeds)].sort());
  const [stands, aside] = [await device.facts(), device.aside()];
  expect(said.filter((fact) => !stands.has(fact) && !aside.has(fact) && !device.ended.has(fact))).toEqual([]);
  const { setAside } = device.store.health();
  const again = await device.merge(from.device, file);
  expect(again.after).toEqual(again.before);
  expect(device.store.health().setAside).toEqual(setAside);
}

describe(`${EVENINGS} evenings of three devices that remove, bring back, and take in files of any age`, () => {
  standApart();

  it(
    'bring nothing back that was removed knowingly, lose nothing that was not, and end equal',
    async () => {
      let stayedAway = 0;
      for (let evening = 0; evening < EVENINGS; evening++) {
        const { uniform } = seededRandom(20_270_301 + evening);
        const draw: Draw = (below) => Math.floor(uniform() * below);
        const all = await Promise.all(
          ['phone', 'laptop', 'tablet'].map(async (name, i): Promise<Known> => {
            // Clocks that are wrong by a day each, and one that runs backwards.
            let step = 0;
            const device = await Device.open(
              name,
              () => START + i * 86_400_000 + (i === 2 ? -1 : 1) * ++step * 1000,
            );
            await device.start();
            return { device, deeds: new Set() };
          }),
        );
        const files: Kept[] = [];
        const one = (): Known => all[draw(3)] as Known;
        for (let step = 0; step < STEPS; step++) {
          const known = one();
          const what = draw(5);
          if (what === 0) files.push(await keep(known, draw(10) === 0));
          else if (what === 1) await takeIn(known, await keep(one(), false));
          else if (what === 2 && files.length > 0) await takeIn(known, files[draw(files.length)] as Kept);
          else await work(known, draw, 3000 + step);
        }
        // Twice around: then everybody has heard from everybody.
        for (const into of [...all, ...all])
          for (const from of all) await takeIn(into, await keep(from, false));
        const logs = await Promise.all(
          all.map(async ({ device }) =>
            (await device.store.list('log')).map(({ id, value }) => `${id} ${value.note}`).sort(),
          ),
        );
        expect(logs[1]).toEqual(logs[0]);
        expect(logs[2]).toEqual(logs[0]);
        const deeds = all[0]?.deeds ?? new Set<Deed>();
        stayedAway += [...deeds].some(({ id, kind }) => kind === 'removed' && !standing(deeds).includes(id))
          ? 1
          : 0;
        for (const { device } of all) device.store.close();
      }
      // The evenings are worth something only if much is removed on them.
      expect(stayedAway).toBeGreaterThan(EVENINGS / 4);
    },
    EVENINGS * 1000,
  );
});
