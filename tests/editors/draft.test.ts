// @vitest-environment jsdom
import fc from 'fast-check';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { EVENT_SHAPE } from '@/lib/fields/event/draft-from-event';
import { changed, startHistory, undone } from '@/lib/fields/history';
import { HOURS_SHAPE } from '@/lib/fields/hours/hours-draft';
import { MACHINE_SHAPE } from '@/lib/fields/machine/draft-from-machine';
import { sameShape } from '@/lib/fields/same-shape';
import { dropDraft, keepDraft, keptDraft } from '@/lib/store/drafts';

describe('the way back', () => {
  it('takes typing on in one field as one step, and every other act as one of its own', () => {
    let history = startHistory('');
    for (const text of ['4', '41', '410']) history = changed(history, text, 'main');
    history = changed(history, '410 and a name', 'name');
    history = changed(history, 'pasted', null);
    history = changed(history, 'pasted again', null);
    const steps: string[] = [];
    for (; history.past.length > 0; history = undone(history)) steps.push(history.present);
    expect(steps).toEqual(['pasted again', 'pasted', '410 and a name', '410']);
    expect(history.present).toBe('');
    expect(undone(history)).toBe(history);
  });

  it('starts a new step in the same field after going back', () => {
    const once = changed(changed(startHistory('a'), 'b', 'f'), 'c', 'f');
    const again = changed(undone(once), 'd', 'f');
    expect(undone(again).present).toBe('a');
  });

  it('leads back to the start from any hundred changes', () => {
    const change = fc.tuple(fc.string(), fc.option(fc.constantFrom('x', 'y', 'z')));
    fc.assert(
      fc.property(fc.array(change, { maxLength: 100 }), (changes) => {
        let history = changes.reduce((h, [text, field]) => changed(h, text, field), startHistory('start'));
        while (history.past.length > 0) history = undone(history);
        expect(history.present).toBe('start');
      }),
    );
  });
});

describe('a draft read back', () => {
  it('is known by its shape, whatever its texts and however long its lists', () => {
    expect(sameShape(EVENT_SHAPE, { ...EVENT_SHAPE, name: 'x', runs: [] })).toBe(true);
    expect(sameShape(HOURS_SHAPE, structuredClone(HOURS_SHAPE))).toBe(true);
    expect(sameShape(MACHINE_SHAPE, structuredClone(MACHINE_SHAPE))).toBe(true);
  });

  it('is left aside where a field is missing, of another kind or unknown', () => {
    const { name: _, ...nameless } = EVENT_SHAPE;
    expect(sameShape(EVENT_SHAPE, nameless)).toBe(false);
    expect(sameShape(EVENT_SHAPE, { ...EVENT_SHAPE, ride: 'yes' })).toBe(false);
    expect(sameShape(EVENT_SHAPE, { ...EVENT_SHAPE, more: '' })).toBe(false);
    expect(sameShape(EVENT_SHAPE, { ...EVENT_SHAPE, runs: [{ key: 'only' }] })).toBe(false);
    expect(sameShape(EVENT_SHAPE, null)).toBe(false);
    expect(sameShape(EVENT_SHAPE, [])).toBe(false);
    expect(sameShape(EVENT_SHAPE, 'text')).toBe(false);
  });
});

describe('unsaved typing', () => {
  beforeEach(() => localStorage.clear());

  it('is kept apart by key until it is dropped', () => {
    expect(keepDraft('machine.a', { main: '41O' })).toBe(true);
    expect(keptDraft('machine.a')).toEqual({ main: '41O' });
    expect(keptDraft('machine.b')).toBeNull();
    dropDraft('machine.a');
    expect(keptDraft('machine.a')).toBeNull();
  });

  it('costs nothing where the browser keeps nothing', () => {
    vi.spyOn(Storage.prototype, 'setItem').mockImplementation(() => {
      throw new DOMException('full', 'QuotaExceededError');
    });
    vi.spyOn(Storage.prototype, 'getItem').mockImplementation(() => {
      throw new DOMException('shut', 'SecurityError');
    });
    vi.spyOn(Storage.prototype, 'removeItem').mockImplementation(() => {
      throw new DOMException('shut', 'SecurityError');
    });
    expect(keepDraft('machine.a', {})).toBe(false);
    // It lives as long as the page.
    expect(keptDraft('machine.a')).toEqual({});
    expect(() => dropDraft('machine.a')).not.toThrow();
    expect(keptDraft('machine.a')).toBeNull();
  });

  it('that is no JSON is left aside', () => {
    localStorage.setItem('heavy-air.draft.machine.a', '{"main":');
    expect(keptDraft('machine.a')).toBeNull();
  });
});
