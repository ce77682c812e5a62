// @vitest-environment jsdom
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { dropKeptNight, keepNight, keptNight } from '@/lib/store/kept-night';
import { closeTabs, freshBrowser, machine, openTab } from './tabs';

const BUILD = '/_next/static/abc/planner.js';

beforeEach(() => {
  freshBrowser();
  vi.stubEnv('PLANNER_FILE', BUILD);
});
afterEach(() => {
  closeTabs();
  vi.unstubAllEnvs();
  localStorage.clear();
});

describe('the night kept for the next visit', () => {
  it('is read back as it was kept', () => {
    expect(keptNight()).toBeNull();
    keepNight('{"name":"a b"}');
    expect(keptNight()).toBe('{"name":"a b"}');
    dropKeptNight();
    expect(keptNight()).toBeNull();
  });

  it('is nothing to another build', () => {
    keepNight('{}');
    vi.stubEnv('PLANNER_FILE', '/_next/static/abcd/planner.js');
    expect(keptNight()).toBeNull();
  });

  it('is not kept where no build reads it', () => {
    vi.stubEnv('PLANNER_FILE', undefined);
    keepNight('{}');
    expect(localStorage.length).toBe(0);
  });

  it('leaves no older one where there is no room for it', () => {
    keepNight('{"older":true}');
    vi.spyOn(Storage.prototype, 'setItem').mockImplementation(() => {
      throw new DOMException('full', 'QuotaExceededError');
    });
    keepNight('{"newer":true}');
    expect(keptNight()).toBeNull();
  });

  it('goes with the first write to the store, and not with reading it', async () => {
    const store = await openTab();
    keepNight('{}');
    await store.list('machines');
    expect(keptNight()).toBe('{}');
    const put = await store.put('machines', 'sled', machine('Sled'), null);
    expect(put.ok).toBe(true);
    expect(keptNight()).toBeNull();
    keepNight('{}');
    await store.rewrite((current) => current);
    expect(keptNight()).toBeNull();
  });
});
