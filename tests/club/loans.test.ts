import { describe, expect, it } from 'vitest';
import type { Box } from '@/lib/carb/machine';
import { clubBoxes, shortIn, spareIn } from '@/lib/club/boxes';
import { makePlan } from '@/lib/plan/make-plan';
import { makeBriefing } from '@/tests/support/make-briefing';
import { machineOf } from '@/tests/support/plan-cases';
import { boxOf, clubNight, racerOf } from './club-cases';

/** 410 proven at -6 °C; the night falls to -19 °C, where about 430 is right. */
const POOR = boxOf([390, 400, 410]);
const poor = (id: string) => racerOf({ id, machine: machineOf({ box: POOR }) });
const rich = (id: string, box: Box) => racerOf({ id, machine: machineOf({ box }) });
const lendingTo = (briefing: ReturnType<typeof makeBriefing>, id: string) =>
  briefing.borrowings.find(({ want }) => want.racerId === id);

describe('borrowing', () => {
  it('finds nobody in want in a club whose boxes will do', () => {
    expect(makeBriefing([racerOf({ id: 'a' }), racerOf({ id: 'b' })], clubNight()).borrowings).toEqual([]);
  });

  it('names who lacks what, for which runs, and who has it to spare', () => {
    const briefing = makeBriefing(
      [poor('poor'), rich('owner', boxOf([400, 410, 420, 430, 440, 450], 3))],
      clubNight(),
    );
    const found = lendingTo(briefing, 'poor');
    expect(found?.want.side).toBe('richer');
    expect(found?.want.runs.length).toBeGreaterThan(0);
    expect(found?.want.sizes?.[0]).toBeGreaterThan(410);
    expect(found?.loans.length).toBeGreaterThan(0);
    for (const loan of found?.loans ?? []) {
      expect(loan.fromBox).toBe('owner');
      expect(loan.count).toBe(1);
    }
    expect(found?.left).toEqual([]);
  });

  it('keeps its word: planned with the loans, no run of the borrower is over the limit', () => {
    const night = clubNight();
    const borrower = poor('poor');
    const briefing = makeBriefing([borrower, rich('owner', boxOf([400, 410, 420, 430, 440, 450], 3))], night);
    const loans = lendingTo(briefing, 'poor')?.loans ?? [];
    const { machine, runs } = borrower;
    const fresh = makePlan({
      ...night,
      runs,
      fitted: null,
      made: [],
      accepted: null,
      machine: { ...machine, box: [...machine.box, ...loans] },
    });
    expect(fresh.ok && fresh.value.warnings.filter(({ code }) => code === 'no-jet-rich-enough')).toEqual([]);
  });

  it('lends nothing that its owner needs in any run of the night', () => {
    const briefing = makeBriefing(
      [poor('poor'), rich('owner', boxOf([400, 410, 420, 430, 440, 450], 1))],
      clubNight(),
    );
    const owner = briefing.planned.find(({ racer }) => racer.id === 'owner')!;
    const used = new Set(owner.plan.runs.flatMap(({ setting }) => setting.mains));
    const lent = lendingTo(briefing, 'poor')?.loans.map(({ size }) => size) ?? [];
    expect(lent).not.toEqual([]);
    expect(lent.filter((size) => used.has(size))).toEqual([]);
  });

  it('lends a piece once: the second in want gets what is left, or nothing', () => {
    const box = [...boxOf([400, 410, 420], 2), { size: 430, count: 2 }, { size: 440, count: 1 }];
    const askers = ['first', 'second', 'third', 'fourth', 'fifth'].map(poor);
    const briefing = makeBriefing([...askers, rich('owner', box)], clubNight());
    const lent = new Map<number, number>();
    for (const { loans } of briefing.borrowings)
      for (const { size, count } of loans) lent.set(size, (lent.get(size) ?? 0) + count);
    const spare = spareIn(briefing.boxes.find(({ boxId }) => boxId === 'owner')!);
    expect([...lent].every(([size, count]) => count <= (spare.get(size) ?? 0))).toBe(true);
    expect(lent.size).toBeGreaterThan(0);
    expect(briefing.borrowings.at(-1)?.loans).toEqual([]);
    expect(briefing.borrowings.at(-1)?.left).toEqual(briefing.borrowings.at(-1)?.want.runs);
  });

  it('lends between jets of one marking only: 430 by bore is another jet than 430 by flow', () => {
    const bore = racerOf({
      id: 'owner',
      machine: machineOf({ marking: { kind: 'bore' }, box: boxOf([400, 410, 420, 430, 440], 3) }),
    });
    expect(lendingTo(makeBriefing([poor('poor'), bore], clubNight()), 'poor')?.loans).toEqual([]);
  });

  it('lends no jet that the borrower’s engine drowns in, and says what it still has to find', () => {
    const small = { carburettors: [{ main: 170 }] };
    const briefing = makeBriefing(
      [
        racerOf({ id: 'poor', machine: machineOf({ ...small, box: boxOf([165, 170]) }) }),
        rich('owner', boxOf([340, 400, 410, 420, 430, 440], 3)),
      ],
      clubNight(),
    );
    const found = lendingTo(briefing, 'poor')!;
    expect(found.want.side).toBe('richer');
    expect(found.loans).toEqual([]);
    expect(found.left.length).toBeGreaterThan(0);
    const { standing } = briefing.planned.find(({ racer }) => racer.id === 'poor')!;
    expect(standing.dangers.length).toBeGreaterThan(0);
    for (const size of found.want.sizes ?? []) expect(size % 2.5).toBe(0);
  });

  it('serves lean engines before rich ones', () => {
    const tooRich = racerOf({
      id: 'rich',
      machine: machineOf({ box: boxOf([460, 470]), carburettors: [{ main: 410 }] }),
    });
    const { borrowings } = makeBriefing([tooRich, poor('poor')], clubNight());
    expect(borrowings.map(({ want }) => [want.racerId, want.side])).toEqual([
      ['poor', 'richer'],
      ['rich', 'leaner'],
    ]);
  });
});

describe('a shared box', () => {
  it('counts its pieces once and says where its owners together ask too much of it', () => {
    const box = boxOf([380, 390, 400, 410, 420, 430, 440, 450], 1);
    const sharers = ['a', 'b'].map((id) => racerOf({ id, boxId: 'shared', machine: machineOf({ box }) }));
    const { boxes, planned } = makeBriefing(sharers, clubNight());
    expect(boxes).toHaveLength(1);
    const [shared] = boxes;
    const used = new Set(planned[0]?.plan.runs.flatMap(({ setting }) => setting.mains));
    // Two alike machines want the same jets at the same time, and there is one of each.
    expect([...shortIn(shared!)]).toEqual(expect.arrayContaining([...used].map((size) => [size, 1])));
    for (const size of used) expect(spareIn(shared!).has(size)).toBe(false);
  });

  it('is short of nothing where it belongs to one', () => {
    const { planned } = makeBriefing([racerOf({ id: 'a' })], clubNight());
    expect(clubBoxes(planned).map((box) => [...shortIn(box)])).toEqual([[]]);
  });
});
