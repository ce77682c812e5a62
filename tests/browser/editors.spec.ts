import { expect, type Page } from '@playwright/test';
import { EVENING } from './clock';
import { accessFaults, overflows, test } from './watched-page';

test.use({ now: '18:15' });

const MACHINE = {
  Name: 'Blue 600',
  'Main jet': '410',
  'Jets in the box': '400x3 410x3 420',
  Temperature: '14',
  Elevation: '1150',
} as const;

async function fillIn(page: Page, texts: Readonly<Record<string, string>>): Promise<void> {
  for (const [name, text] of Object.entries(texts))
    await page.getByRole('textbox', { name, exact: true }).fill(text);
}

/** The bar at the foot of a form covers what scrolls under it; at the end of the form it covers nothing. */
async function formFaults(page: Page): Promise<readonly string[]> {
  await page.getByRole('button', { name: 'Cancel' }).evaluate((cancel) => {
    for (let box = cancel.parentElement; box !== null; box = box.parentElement)
      box.scrollTop = box.scrollHeight;
  });
  return accessFaults(page);
}

/** Fields that cannot be seen when they have the focus, by name. */
function hiddenWhenFocused(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const fields = document.querySelectorAll<HTMLElement>('form :is(input, select, textarea)');
    return [...fields].flatMap((field) => {
      field.focus();
      // What is folded away cannot take the focus.
      if (document.activeElement !== field) return [];
      const { left, top, width, height } = field.getBoundingClientRect();
      const seen = document.elementFromPoint(left + width / 2, top + height / 2);
      const isSeen = seen !== null && (field.contains(seen) || seen.contains(field));
      return isSeen ? [] : [`${field.getAttribute('name')} behind ${seen?.outerHTML.slice(0, 80)}`];
    });
  });
}

test.describe('machines', () => {
  test('are added with five entries and are there after a reload', async ({ night }) => {
    await night.goto('/machines');
    await night.getByRole('button', { name: 'Add a machine' }).click();
    await fillIn(night, MACHINE);
    await night.getByRole('button', { name: 'Save machine' }).click();
    await expect(night.getByRole('heading', { name: 'Blue 600' })).toBeVisible();
    await night.reload();
    await expect(night.getByRole('heading', { name: 'Blue 600' })).toBeVisible();
    await night.getByRole('button', { name: 'Delete Blue 600' }).click();
    await expect(night.getByRole('heading', { name: 'Blue 600' })).toBeHidden();
    await night.getByRole('button', { name: 'Undo' }).click();
    await expect(night.getByRole('heading', { name: 'Blue 600' })).toBeVisible();
  });

  test('lose no typing to a reload, and the back key closes the form', async ({ night }) => {
    await night.goto('/machines');
    await night.getByRole('button', { name: 'Add a machine' }).click();
    await fillIn(night, { 'Main jet': '41O' });
    await night.reload();
    await expect(night.getByRole('textbox', { name: 'Main jet' })).toHaveValue('41O');
    await expect(night.getByText(/did not save is back/)).toBeVisible();
    await night.goBack();
    await expect(night.getByRole('button', { name: 'Add a machine' })).toBeVisible();
  });

  test('say what is missing and put the cursor there', async ({ night }) => {
    await night.goto('/machines?edit=new');
    await night.getByRole('button', { name: 'Save machine' }).click();
    await expect(night.getByRole('alert').filter({ hasText: 'things to put right' })).toBeVisible();
    await expect(night.getByRole('textbox', { name: 'Name' })).toBeFocused();
    await expect(night.getByRole('textbox', { name: 'Name' })).toBeInViewport();
    expect(await formFaults(night)).toEqual([]);
    expect(await overflows(night)).toBe(false);
  });

  test('have a form that a screen reader and a narrow screen can use, with everything open', async ({
    night,
  }) => {
    await night.goto('/machines?edit=new');
    await night.getByRole('button', { name: 'Save machine' }).waitFor();
    for (const summary of await night.locator('form summary').all()) await summary.click();
    for (const box of await night.locator('form').getByRole('checkbox').all()) await box.check();
    expect(await hiddenWhenFocused(night)).toEqual([]);
    expect(await formFaults(night)).toEqual([]);
    expect(await overflows(night)).toBe(false);
  });
});

test.describe('the hours of the night', () => {
  test('take a pasted column of 24 hours in one act', async ({ night, context }) => {
    await context.grantPermissions(['clipboard-read', 'clipboard-write']);
    await night.goto('/#hours');
    const first = night.getByRole('textbox', { name: '12:00' });
    await first.waitFor();
    const column = Array.from({ length: 24 }, (_, i) => String(-i)).join('\n');
    await night.evaluate((text) => navigator.clipboard.writeText(text), column);
    await first.focus();
    await night.keyboard.press('ControlOrMeta+V');
    await expect(night.getByText('24 hours pasted.')).toBeVisible();
    await expect(night.getByRole('textbox', { name: '13:00' })).toHaveValue('-1');
    await night.getByRole('button', { name: 'Undo' }).click();
    await expect(first).toHaveValue('17');
  });

  test('show what was typed and what lies between in different ways', async ({ night }) => {
    await night.goto('/#hours');
    const typed = night.getByRole('textbox', { name: '21:00' });
    const between = night.getByRole('textbox', { name: '22:00' });
    await expect(typed).toHaveValue('6');
    await expect(between).toHaveValue('');
    await expect(between).toHaveAttribute('placeholder', /°F$/);
    await expect(typed).toHaveAccessibleDescription('°F typed');
    await expect(between).toHaveAccessibleDescription('in between');
    const border = (element: Element) => getComputedStyle(element).borderTopStyle;
    expect(await typed.evaluate(border)).toBe('solid');
    expect(await between.evaluate(border)).toBe('dashed');
    expect(await hiddenWhenFocused(night)).toEqual([]);
    expect(await formFaults(night)).toEqual([]);
    expect(await overflows(night)).toBe(false);
  });

  test('change the plan once they are saved', async ({ night }) => {
    await night.goto('/');
    const call = night.getByRole('region', { name: 'The call' });
    await expect(call).toContainText('Start on 410 400 410');
    await night.goto('/#hours');
    await night.getByRole('button', { name: 'Empty all' }).click();
    const hours = night.locator('input[name^="rows."][name$=".temperature"]');
    // Points more than 12 hours apart are not bridged. On a night the clocks change the last hour has another name.
    for (const hour of [hours.first(), night.getByRole('textbox', { name: '23:00' }), hours.last()])
      await hour.fill('-25');
    await night.getByRole('button', { name: 'Save hours' }).click();
    await expect(night.getByRole('button', { name: 'Save hours' })).toBeHidden();
    await expect(call).not.toContainText('Start on 410 400 410');
  });
});

test.describe('the event', () => {
  // Norway and the track change their clocks on different days.
  test.use({ now: EVENING });

  test('finds the zone of the track by its city and tells track time', async ({ night }) => {
    await night.goto('/#event');
    const zone = night.getByRole('combobox', { name: 'Time zone of the track' });
    await zone.fill('oslo');
    await night.getByRole('option', { name: 'Europe/Oslo' }).click();
    await expect(zone).toHaveValue('Europe/Oslo');
    await expect(night.getByText(/Track time is 01:15 now/)).toBeVisible();
  });

  test('has a form that a screen reader and a narrow screen can use, as a list and as a series', async ({
    night,
  }) => {
    await night.goto('/#event');
    await night.getByRole('button', { name: 'Save event' }).waitFor();
    expect(await formFaults(night)).toEqual([]);
    expect(await overflows(night)).toBe(false);
    await night.getByRole('radio', { name: 'First, every, how many' }).check();
    expect(await formFaults(night)).toEqual([]);
    expect(await overflows(night)).toBe(false);
  });
});
