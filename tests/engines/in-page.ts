import { expect } from '@playwright/test';
import type { Engine } from './engine';

/** Follows the link to a page of the app in a moment, as a finger does. */
export function tapLater(path: string, afterMs: number): void {
  setTimeout(() => document.querySelector<HTMLAnchorElement>(`a[href="${path}"]`)?.click(), afterMs);
}

/** The last button or choice of that name: what a dialog or a form has opened stands after the rest. */
export function press(name: string): boolean {
  const all = [...document.querySelectorAll<HTMLElement>('button, label')];
  const found = all.filter(({ textContent }) => textContent?.trim() === name).at(-1);
  // Not before the answer is out: a press may change the address, and with that the page that would answer.
  if (found !== undefined) setTimeout(() => found.click());
  return found !== undefined;
}

export function type(label: string, text: string): boolean {
  const named = [...document.querySelectorAll('label')].find(({ textContent }) =>
    textContent?.startsWith(label),
  );
  const input = document.getElementById(named?.htmlFor ?? '');
  if (!(input instanceof HTMLInputElement)) return false;
  // Past what the framework keeps of the field, as a person's typing is.
  Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')?.set?.call(input, text);
  input.dispatchEvent(new Event('input', { bubbles: true }));
  return true;
}

function shownText(): { path: string; text: string } {
  // biome-ignore lint/performance/useDomNodeTextContent: what is hidden does not count
  return { path: location.pathname, text: document.body.innerText };
}

/** The words on the screen; none while one page makes way for another, or stands at another path. */
export async function textOf(engine: Engine, path?: string): Promise<string> {
  const shown = await engine.ask(shownText).catch(() => ({ path: '', text: '' }));
  return path === undefined || shown.path === path ? shown.text.replace(/\s+/g, ' ') : '';
}

export async function shows(engine: Engine, words: string, path?: string): Promise<void> {
  await expect.poll(() => textOf(engine, path), { intervals: [50] }).toContain(words);
}

/** Once it can be done: a page that wakes up does not hear a first try. */
export async function does<A extends readonly unknown[]>(
  engine: Engine,
  act: (...args: A) => boolean,
  ...args: A
): Promise<void> {
  await expect.poll(() => engine.ask(act, ...args).catch(() => false), { intervals: [50] }).toBe(true);
}
