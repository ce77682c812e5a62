// @vitest-environment jsdom
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { copyNight, dropNightCopy, nightCopy } from '@/lib/store/night-copy';
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
    expect(nightCopy()).toBeNull();
    copyNight('{"name":"a b"}');
    expect(nightCopy()).toBe('{"name":"a b"}');
    dropNightCopy();
    expect(nightCopy()).toBeNull();
  });

  it('is nothing to another build', () => {
    copyNight('{}');
    vi.stubEnv('PLANNER_FILE', '/_next/static/abcd/planner.js');
    expect(nightCopy()).toBeNull();
  });

  it('is not kept where no build reads it', () => {
    vi.stubEnv('PLANNER_FILE', undefined);
    copyNight('{}');
    expect(localStorage.length).toBe(0);
  });

  it('leaves no older one where there is no room for it', () => {
    copyNight('{"older":true}');
    vi.spyOn(Storage.prototype, 'setItem').mockImplementation(() => {
      throw new DOMException('full', 'QuotaExceededError');
    });
    copyNight('{"newer":true}');
    expect(nightCopy()).toBeNull();
  });

  it('is none where nothing may be kept', () => {
    for (const act of ['getItem', 'setItem', 'removeItem'] as const)
      vi.spyOn(Storage.prototype, act).mockImplementation(() => {
        throw new DOMException('forbidden', 'SecurityError');
      });
    copyNight('{}');
    dropNightCopy();
    expect(nightCopy()).toBeNull();
  });

  it('goes with the first write to the store, and not with reading it', async () => {
    const store = await openTab();
    copyNight('{}');
    await store.list('machines');
    expect(nightCopy()).toBe('{}');
    const put = await store.put('machines', 'sled', machine('Sled'), null);
    expect(put.ok).toBe(true);
    expect(nightCopy()).toBeNull();
    copyNight('{}');
    await store.rewrite((current) => current);
    expect(nightCopy()).toBeNull();
  });
});
