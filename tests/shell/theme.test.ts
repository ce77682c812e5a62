// @vitest-environment jsdom
import { afterEach, describe, expect, it } from 'vitest';
import { applyTheme, THEME_SCRIPT } from '@/components/shell/theme';

const root = document.documentElement;

afterEach(() => {
  localStorage.clear();
  delete root.dataset.theme;
  delete root.dataset.dim;
  root.removeAttribute('style');
});

/** What the page's head does before anything is painted. */
function runHeadScript(): void {
  // The script is a string because it must stand in the HTML; here it runs the way the browser runs it.
  new Function(THEME_SCRIPT)();
}

describe('the theme', () => {
  it('follows the device unless told otherwise', () => {
    applyTheme({ theme: 'night', brightness: 1 });
    expect(root.dataset.theme).toBe('night');
    applyTheme({ theme: 'auto', brightness: 1 });
    expect(root.dataset.theme).toBeUndefined();
  });

  it('dims the night and never the day', () => {
    applyTheme({ theme: 'night', brightness: 0.5 });
    expect(root.style.getPropertyValue('--brightness')).toBe('0.5');
    applyTheme({ theme: 'day', brightness: 0.5 });
    expect(root.dataset.dim).toBeUndefined();
  });

  it('is back before the first paint of the next visit', () => {
    applyTheme({ theme: 'night', brightness: 0.6 });
    delete root.dataset.theme;
    delete root.dataset.dim;
    root.removeAttribute('style');
    runHeadScript();
    expect(root.dataset.theme).toBe('night');
    expect(root.dataset.dim).toBe('');
    expect(root.style.getPropertyValue('--brightness')).toBe('0.6');
  });

  it('does nothing where nothing, or nonsense, is remembered', () => {
    runHeadScript();
    expect(root.dataset.theme).toBeUndefined();
    localStorage.setItem('heavy-air-theme', '{not json');
    runHeadScript();
    expect(root.dataset.theme).toBeUndefined();
  });
});
