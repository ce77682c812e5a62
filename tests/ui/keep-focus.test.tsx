// @vitest-environment jsdom
import { cleanup, render, screen, waitFor } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { type ReactNode, useState } from 'react';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { keepFocus } from '@/components/ui/keep-focus';
import { Section } from '@/components/ui/section';
import { ToastProvider, useToast } from '@/components/ui/toast';

let end: () => void;
/** jsdom lays nothing out, and so has no scrolling. */
const scrollIntoView = vi.fn();

beforeEach(() => {
  scrollIntoView.mockReset();
  Element.prototype.scrollIntoView = scrollIntoView;
  end = keepFocus(document);
});

afterEach(() => {
  end();
  cleanup();
  Reflect.deleteProperty(Element.prototype, 'scrollIntoView');
});

/** A button that is gone once pressed. */
function Once({ label, children }: { readonly label: string; readonly children?: ReactNode }) {
  const [done, setDone] = useState(false);
  return done ? (
    children
  ) : (
    <button type="button" onClick={() => setDone(true)}>
      {label}
    </button>
  );
}

/** A part of the page that is gone once its button is pressed. */
function Page() {
  const [shown, setShown] = useState(true);
  return (
    <main>
      <h1>Machines</h1>
      {shown ? (
        <Section title="Blue twin">
          <button type="button" onClick={() => setShown(false)}>
            Delete
          </button>
        </Section>
      ) : null}
    </main>
  );
}

function Acts() {
  const say = useToast();
  const [fitted, setFitted] = useState('410');
  const fit = () => {
    setFitted('420');
    say({ text: 'Fitted: 420.', act: { label: 'Undo', do: () => setFitted('410') } });
  };
  return (
    <>
      <button type="button" onClick={fit}>
        Fit 420
      </button>
      <p>Fitted {fitted}</p>
      <input aria-label="Note" />
    </>
  );
}

const focused = () => document.activeElement;

describe('the focus', () => {
  it('goes to the heading of its part of the page when the button it was on is gone', async () => {
    const user = userEvent.setup();
    render(
      <main>
        <h1>Night</h1>
        <Section title="Next">
          <Once label="I have fitted 420" />
        </Section>
      </main>,
    );
    await user.tab();
    await user.keyboard('{Enter}');
    await waitFor(() => expect(focused()).toBe(screen.getByRole('heading', { name: 'Next' })));
  });

  it('goes to the part around when the whole part is gone', async () => {
    const user = userEvent.setup();
    render(<Page />);
    await user.tab();
    await user.keyboard('{Enter}');
    await waitFor(() => expect(focused()).toBe(screen.getByRole('heading', { name: 'Machines' })));
  });

  it('comes back to a button that was out of use for a moment', async () => {
    const user = userEvent.setup();
    render(
      <main>
        <button type="button">Ask again</button>
      </main>,
    );
    const button = screen.getByRole<HTMLButtonElement>('button', { name: 'Ask again' });
    await user.tab();
    // jsdom leaves the focus on what is out of use; a browser lets it go.
    button.blur();
    button.disabled = true;
    await Promise.resolve();
    expect(focused()).toBe(document.body);
    button.disabled = false;
    await waitFor(() => expect(focused()).toBe(button));
  });

  it('stays away where a tap beside everything let it go', async () => {
    const user = userEvent.setup();
    render(
      <main>
        <Section title="Next">
          <Once label="I have fitted 420" />
        </Section>
        <p>beside</p>
      </main>,
    );
    await user.tab();
    await user.click(screen.getByText('beside'));
    screen.getByRole('button').remove();
    await Promise.resolve();
    expect(focused()).toBe(document.body);
  });

  it('stays where a new owner took it', async () => {
    const user = userEvent.setup();
    render(
      <main>
        <Section title="Next">
          <Once label="Edit">
            {/* biome-ignore lint/a11y/noAutofocus: the case under test */}
            <input aria-label="Jet" autoFocus />
          </Once>
        </Section>
      </main>,
    );
    await user.tab();
    await user.keyboard('{Enter}');
    expect(focused()).toBe(screen.getByRole('textbox', { name: 'Jet' }));
  });
});

describe('the way back by keys', () => {
  it('is Ctrl+Z, but not in a field, where it takes back typing', async () => {
    const user = userEvent.setup();
    render(
      <ToastProvider>
        <Acts />
      </ToastProvider>,
    );
    await user.click(screen.getByRole('button', { name: 'Fit 420' }));
    expect(screen.getByRole('button', { name: 'Undo' }).getAttribute('aria-keyshortcuts')).toBe(
      'Control+Z Meta+Z',
    );
    await user.click(screen.getByRole('textbox', { name: 'Note' }));
    await user.keyboard('{Control>}z{/Control}');
    screen.getByText('Fitted 420');
    screen.getByRole('button', { name: 'Fit 420' }).focus();
    await user.keyboard('{Control>}z{/Control}');
    screen.getByText('Fitted 410');
    expect(screen.queryByRole('button', { name: 'Undo' })).toBeNull();
  });

  it('brings the place into sight of whoever goes by keys', async () => {
    render(<Page />);
    await userEvent.tab();
    await userEvent.keyboard('{Enter}');
    const title = await screen.findByRole('heading', { name: 'Machines' });
    await waitFor(() => expect(document.activeElement).toBe(title));
    expect(scrollIntoView.mock.contexts).toEqual([title]);
    expect(scrollIntoView).toHaveBeenCalledWith({ block: 'nearest' });
  });
});
