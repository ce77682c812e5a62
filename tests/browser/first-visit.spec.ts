import { PAGES } from '@/components/shell/pages';
import { expectNothingMoved, keepMoves } from './moves';
import { test } from './watched-page';

test.use({ timezoneId: 'America/Chicago', now: '18:15' });

/** Nothing is on its way any more and nothing says so of itself. */
const ONE_TO_COME = /^(Opening|Planning|Looking) [^.]*…$|^Planning…$/;

// The night's own first visit, in early-answer.spec.ts, is tried with its scripts held back as well.
for (const { href, label } of [...PAGES, { href: '/after', label: 'After the night' }])
  test(`what stands on a first visit moves nowhere while the page wakes up: ${label}`, async ({ night }) => {
    // Its face is at hand by then: what that would move is not a matter of waking up.
    await night.goto('/aside');
    await keepMoves(night);
    await night.goto(href);
    await night.waitForLoadState('networkidle');
    await night.waitForFunction(
      (coming) =>
        document.querySelector('main[aria-busy]') === null &&
        [...document.querySelectorAll('main p')].every(
          ({ textContent }) => !new RegExp(coming).test(textContent ?? ''),
        ),
      ONE_TO_COME.source,
    );
    await expectNothingMoved(night);
  });
