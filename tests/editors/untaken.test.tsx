// @vitest-environment jsdom
import { cleanup, render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { useKeptText } from '@/components/draft/use-kept-text';
import { HoursEditor } from '@/components/hours/hours-editor';
import { TextArea } from '@/components/ui/text-area';
import { untakenSearch } from '@/components/weather/place-draft';
import { dropDraft, keepDraft, keptDraft } from '@/lib/store/drafts';
import { METRIC_UNITS } from '@/lib/units/choice';

beforeEach(() => localStorage.clear());
afterEach(cleanup);

const EVENT = {
  timezone: 'America/Chicago',
  elevationM: 402,
  runs: [
    { name: 'Round 1', start: '2027-01-16T19:00:00-06:00', end: '2027-01-16T22:06:00-06:00', weight: 1 },
  ],
};
const COLUMN = '-4\n-5\n-7\n-9\n-10';

function open() {
  const saved = vi.fn();
  render(
    <HoursEditor
      id="h"
      initial={null}
      event={EVENT}
      units={METRIC_UNITS}
      onSave={saved}
      onCancel={() => undefined}
    />,
  );
  return { user: userEvent.setup({ delay: null }), saved };
}

async function paste(user: ReturnType<typeof userEvent.setup>, name: string, text: string) {
  await user.click(screen.getByLabelText(name, { selector: 'input, textarea' }));
  await user.paste(text);
}

const press = (user: ReturnType<typeof userEvent.setup>, name: string) =>
  user.click(screen.getByRole('button', { name }));
const temperatures = (saved: ReturnType<typeof vi.fn>) =>
  saved.mock.calls[0]?.[0].typed.hours.map((hour: { temperatureC: number }) => hour.temperatureC);

describe('saving hours with a pasted column that was not taken over', () => {
  async function pasteAndSave(text = COLUMN) {
    const { user, saved } = open();
    await user.click(screen.getByText('Paste hours from a spreadsheet'));
    await paste(user, 'Pasted hours', text);
    await press(user, 'Save hours');
    return { user, saved };
  }

  it('asks, and keeps the column', async () => {
    const { saved } = await pasteAndSave();
    expect(saved).not.toHaveBeenCalled();
    screen.getByText('5 pasted hours not in the hours yet.');
    expect(screen.getByLabelText<HTMLTextAreaElement>('Pasted hours').value).toBe(COLUMN);
  });

  it('takes it over and saves in one tap', async () => {
    const { user, saved } = await pasteAndSave();
    await press(user, 'Take it over and save');
    expect(temperatures(saved)).toEqual([-4, -5, -7, -9, -10]);
  });

  it('leaves it away only when told to', async () => {
    const { user, saved } = open();
    await paste(user, '18:00', '-1');
    await paste(user, '23:00', '-2');
    await user.click(screen.getByText('Paste hours from a spreadsheet'));
    await paste(user, 'Pasted hours', COLUMN);
    await press(user, 'Save hours');
    await press(user, 'Save without it');
    expect(temperatures(saved)).toEqual([-1, -2]);
  });

  it('does not offer to take what cannot be read', async () => {
    await pasteAndSave('cold\nvery cold');
    screen.getByText(/cannot be read yet/);
    expect(screen.queryByRole('button', { name: 'Take it over and save' })).toBeNull();
  });

  it('asks about a time that was typed and not added as well', async () => {
    const { user, saved } = open();
    await paste(user, '18:00', '-1');
    await paste(user, '23:00', '-2');
    await paste(user, 'A time between the hours', '19:40');
    await press(user, 'Save hours');
    expect(saved).not.toHaveBeenCalled();
    await press(user, 'Take it over and save');
    expect(temperatures(saved)).toEqual([-1, -2]);
  });
});

describe('a place that was searched for and not chosen', () => {
  const draft = {
    units: METRIC_UNITS,
    search: '',
    searched: '',
    name: '',
    latitude: '',
    longitude: '',
    elevation: '',
  };
  it('is asked about before the coordinates are taken', () => {
    expect(untakenSearch(draft)).toBeNull();
    expect(untakenSearch({ ...draft, search: 'Lake Or' })?.words).toMatch(/none was chosen/);
    expect(untakenSearch({ ...draft, search: 'Lake Orvana', searched: 'Lake Orvana' })).toBeNull();
  });
});

function Pasting() {
  const [text, setText] = useKeptText('test.table');
  return <TextArea label="Table" value={text} onChange={setText} />;
}

describe('text in a dialog without a form', () => {
  it('is there again after the dialog was closed', async () => {
    const user = userEvent.setup({ delay: null });
    const first = render(<Pasting />);
    await paste(user, 'Table', 'Ilsa Vorn; 410');
    first.unmount();
    render(<Pasting />);
    expect(screen.getByLabelText<HTMLTextAreaElement>('Table').value).toBe('Ilsa Vorn; 410');
    await user.clear(screen.getByLabelText('Table'));
    expect(keptDraft('test.table')).toBeNull();
  });

  it('lives as long as the page where the browser stores nothing', () => {
    vi.spyOn(Storage.prototype, 'setItem').mockImplementation(() => {
      throw new DOMException('full', 'QuotaExceededError');
    });
    expect(keepDraft('full', 'typed')).toBe(false);
    expect(keptDraft('full')).toBe('typed');
    dropDraft('full');
    expect(keptDraft('full')).toBeNull();
  });
});
