import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { BoxRecord, Stored } from '@/lib/store/records';
import type { Store } from '@/lib/store/store-type';
import { seededRandom } from '@/tests/support/seeded-random';
import { closeTabs, freshBrowser, openTab } from './tabs';

/** Ten thousand with INTERLEAVINGS=10000. */
const INTERLEAVINGS = Number(process.env.INTERLEAVINGS ?? 2000);
const EDITS_PER_TAB = 2;

type Seen = { readonly revision: number | null; readonly sizes: readonly number[] };

const sizesOf = (value: BoxRecord | undefined): readonly number[] =>
  value?.entries.map(({ size }) => size) ?? [];
const boxOf = (sizes: readonly number[]): BoxRecord => ({
  name: 'spares',
  entries: [...new Set(sizes)].sort((a, b) => a - b).map((size) => ({ size, count: 1 })),
});
const seenOf = (stored: Stored<BoxRecord> | null): Seen => ({
  revision: stored?.revision ?? null,
  sizes: sizesOf(stored?.value),
});

/** One person in one tab who adds sizes to a box, or takes the box away and wants it back. */
class Editor {
  private seen: Seen | null = null;
  private removed: Stored<BoxRecord> | null = null;
  private readonly todo: number[];
  readonly revisions: number[] = [];
  conflicts = 0;

  constructor(
    private readonly tab: Store,
    private readonly id: string,
    sizes: readonly number[],
  ) {
    this.todo = [...sizes];
  }

  get done(): boolean {
    return this.todo.length === 0 && this.removed === null;
  }

  /** One step: a read, or a write based on what was read at some earlier time. */
  async step(chance: number): Promise<void> {
    if (this.removed !== null) return this.undo(this.removed);
    if (this.seen === null) this.seen = seenOf(await this.tab.get('boxes', this.id));
    else if (this.seen.revision !== null && chance < 0.1) await this.remove(this.seen.revision);
    else await this.add(this.seen);
  }

  private async add(seen: Seen): Promise<void> {
    const mine = boxOf([...seen.sizes, ...this.todo.slice(0, 1)]);
    const written = await this.tab.put('boxes', this.id, mine, seen.revision);
    if (written.ok) {
      this.revisions.push(written.value.revision);
      this.todo.shift();
      this.seen = null;
      return;
    }
    if (written.reason.code !== 'conflict') throw new Error(written.reason.code);
    expect(written.reason.mine).toEqual(mine);
    this.settle(written.reason.theirs, seen.sizes);
  }

  private async remove(revision: number): Promise<void> {
    const removed = await this.tab.remove('boxes', this.id, revision);
    this.seen = null;
    if (!removed.ok) return;
    this.revisions.push(removed.value.revision + 1);
    this.removed = removed.value;
  }

  private async undo(removed: Stored<BoxRecord>): Promise<void> {
    const restored = await this.tab.restore('boxes', removed);
    this.removed = null;
    if (restored.ok) {
      this.revisions.push(restored.value.revision);
      return;
    }
    if (restored.reason.code !== 'conflict') throw new Error(restored.reason.code);
    // Someone put a box there meanwhile: what was in mine goes in too.
    this.todo.unshift(
      ...sizesOf(removed.value).filter(
        (size) =>
          !sizesOf(restored.reason.code === 'conflict' ? restored.reason.theirs?.value : undefined).includes(
            size,
          ),
      ),
    );
    this.settle(restored.reason.theirs, []);
  }

  /** A conflict hands over both values; the person keeps all of both. */
  private settle(theirs: Stored<BoxRecord> | null, mine: readonly number[]): void {
    this.conflicts += 1;
    this.seen = { revision: theirs?.revision ?? null, sizes: [...sizesOf(theirs?.value), ...mine] };
  }
}

beforeAll(freshBrowser);
afterAll(closeTabs);

describe('two tabs that edit one box in any order', () => {
  it(`lose nothing in ${INTERLEAVINGS} random interleavings`, async () => {
    const tabs = [await openTab(), await openTab()] as const;
    const { uniform: random } = seededRandom(20_270_116);
    let conflicts = 0;
    for (let run = 0; run < INTERLEAVINGS; run++) {
      const id = `box ${run}`;
      const editors = tabs.map(
        (tab, i) =>
          new Editor(
            tab,
            id,
            Array.from({ length: EDITS_PER_TAB }, (_, k) => 100 * (i + 1) + k),
          ),
      );
      while (editors.some((editor) => !editor.done)) {
        const open = editors.filter((editor) => !editor.done);
        // Now and then both at once, so that the database itself has to put them in order.
        if (random() < 0.2) await Promise.all(open.map((editor) => editor.step(random())));
        else await open[Math.floor(random() * open.length)]?.step(random());
      }
      const stored = await tabs[0].get('boxes', id);
      expect(sizesOf(stored?.value)).toEqual([100, 101, 200, 201]);
      // Every write stands on the one before it: each revision was written once.
      const revisions = editors.flatMap((editor) => editor.revisions).sort((a, b) => a - b);
      expect(revisions).toEqual(revisions.map((_, i) => i + 1));
      expect(stored?.revision).toBe(revisions.length);
      conflicts += editors.some((editor) => editor.conflicts > 0) ? 1 : 0;
    }
    // The interleavings are worth something only if tabs do get into each other's way.
    expect(conflicts).toBeGreaterThan(INTERLEAVINGS / 4);
  }, 240_000);
});
