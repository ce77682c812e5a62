import type { Page } from '@playwright/test';
import type { PlannerReply, PlannerTask } from '@/lib/planner/tasks';
import { instantOf } from './clock';

declare global {
  interface Window {
    /** What a screen reader would have spoken of itself since it was last asked. */
    heard: string[];
    /** The plans the page has asked its worker for and not had, by number. */
    plansAsked: Set<number>;
  }
}

/**
 * Listens to the page as a screen reader does: of a live region that goes as a whole (`status`, `alert`) all of it is
 * spoken when it changes, of one that is only `aria-live` what is new in it. What is hidden or lies behind an open
 * dialog is spoken to nobody. The names of buttons are left out. Before the page is opened.
 */
export async function listen(page: Page): Promise<void> {
  await page.addInitScript(() => {
    window.heard = [];
    window.plansAsked = new Set();
    const post = Worker.prototype.postMessage;
    Worker.prototype.postMessage = function (this: Worker, task: PlannerTask) {
      if ('cancel' in task) window.plansAsked.delete(task.cancel);
      else {
        window.plansAsked.add(task.number);
        this.addEventListener('message', ({ data }: MessageEvent<PlannerReply>) => {
          if (data.number === task.number) window.plansAsked.delete(task.number);
        });
      }
      post.call(this, task);
    };
    const LIVE = '[role=status], [role=alert], [role=log], output, [aria-live]';
    const WHOLE = '[role=status], [role=alert], output, [aria-atomic=true]';
    const said = new WeakMap<Element, string>();
    const wordsOf = (node: Node): string => {
      if (node.nodeType === Node.TEXT_NODE) return node.nodeValue ?? '';
      if (!(node instanceof Element) || node.matches('[aria-hidden=true], button, script')) return '';
      if (!node.checkVisibility()) return '';
      const words = [...node.childNodes].map(wordsOf).join('');
      return getComputedStyle(node).display.startsWith('inline') ? words : ` ${words} `;
    };
    const plain = (words: string): string => words.replace(/\s+/g, ' ').trim();
    const regionOf = (node: Node): Element | null =>
      (node instanceof Element ? node : node.parentElement)?.closest(LIVE) ?? null;
    const isSpoken = (region: Element): boolean => {
      const dialog = [...document.querySelectorAll('dialog:modal')].at(-1);
      return (
        region.isConnected &&
        region.checkVisibility() &&
        region.getAttribute('aria-live') !== 'off' &&
        (dialog === undefined || dialog.contains(region))
      );
    };
    new MutationObserver((records) => {
      const fresh = new Map<Element, Set<Node>>();
      const note = (region: Element | null, nodes: Iterable<Node>) => {
        if (region !== null) fresh.set(region, new Set([...(fresh.get(region) ?? []), ...nodes]));
      };
      for (const { target, type, addedNodes } of records) {
        note(regionOf(target), type === 'characterData' ? [target] : addedNodes);
        for (const node of addedNodes)
          if (node instanceof Element)
            for (const region of [node, ...node.querySelectorAll('*')])
              if (region.matches(LIVE)) note(region, [region]);
      }
      for (const [region, nodes] of fresh) {
        if (!isSpoken(region)) continue;
        const whole = plain(wordsOf(region));
        const isNew = whole !== (said.get(region) ?? '');
        said.set(region, whole);
        const words = region.matches(WHOLE) ? whole : plain([...nodes].map(wordsOf).join(' '));
        if (isNew && words !== '') window.heard.push(words);
      }
    }).observe(document, { childList: true, characterData: true, subtree: true });
  });
}

/** What was spoken since it was last asked. */
export const heard = (page: Page): Promise<readonly string[]> => page.evaluate(() => window.heard.splice(0));

/** Nobody touches the page while its clock goes on, by half a minute each time; it draws each, planned anew where it must. */
export function idle(page: Page, from: string, minutes: number): Promise<void> {
  return page.evaluate(
    async ([start, steps]) => {
      const drawn = () => new Promise((done) => requestAnimationFrame(() => setTimeout(done)));
      for (let step = 1; step <= steps; step += 1) {
        Date.now = () => start + step * 30_000;
        document.dispatchEvent(new Event('visibilitychange'));
        await drawn();
        if (window.plansAsked.size === 0) continue;
        while (window.plansAsked.size > 0) await drawn();
        await drawn();
      }
      await new Promise((rest) => setTimeout(rest, 500));
    },
    [instantOf(from), minutes * 2] as const,
  );
}
