// @vitest-environment jsdom
import { cleanup, fireEvent, render, screen } from '@testing-library/react';
import { useState } from 'react';
import { afterEach, expect, it } from 'vitest';
import { Figures } from '@/components/night/picture/figures';
import { type Picture, pictureOf } from '@/lib/plan/night-picture';
import type { Instant } from '@/lib/time/instant';
import type { Voice } from '@/lib/words/voice';
import { nightCase } from './night-case';

afterEach(cleanup);

const { night, plan, now } = nightCase();
const voice: Voice = {
  zone: night.zone,
  units: { temperature: 'C', pressure: 'hPa', elevation: 'm' },
};
const zone = { zone: night.zone, hours: '24' } as const;

/** A picture that counts how often it is drawn: only the charts read its lanes and its runs. */
function countedPicture() {
  const picture = pictureOf({
    plan,
    machine: night.machine,
    carburettor: 0,
    zone: night.zone,
    place: null,
    span: 'hours',
  });
  if (picture === null) throw new Error('no picture');
  const drawn = { jets: 0, runs: 0 };
  const { lanes, runs } = picture;
  const counted: Picture = Object.defineProperties(
    { ...picture },
    {
      lanes: {
        get: () => {
          drawn.jets += 1;
          return lanes;
        },
      },
      runs: {
        get: () => {
          drawn.runs += 1;
          return runs;
        },
      },
    },
  );
  return { picture: counted, drawn };
}

function Shown({ picture, at }: { readonly picture: Picture; readonly at: Instant }) {
  const [cursor, setCursor] = useState<Instant | null>(null);
  return (
    <Figures
      {...{ picture, plan, voice: { ...voice, units: { ...voice.units } }, zone, cursor }}
      now={at}
      width={360}
      extra={null}
      onWalk={setCursor}
    />
  );
}

const cursors = () =>
  [...document.querySelectorAll('line[class*="cursor"]')].map((line) => line.getAttribute('x1'));

it('walking the hours moves the cursor and draws neither chart again, nor does the clock', () => {
  const { picture, drawn } = countedPicture();
  const { rerender } = render(<Shown picture={picture} at={now} />);
  const slider = screen.getByRole('slider');
  const first = { ...drawn };
  expect(first.jets).toBeGreaterThan(0);
  // Those of both charts.
  expect(first.runs).toBeGreaterThanOrEqual(2);
  fireEvent.change(slider, { target: { value: '1' } });
  const before = cursors();
  expect(before).toHaveLength(2);
  fireEvent.change(slider, { target: { value: '2' } });
  expect(cursors()).toHaveLength(2);
  expect(cursors()).not.toEqual(before);
  rerender(<Shown picture={picture} at={(now + 30_000) as Instant} />);
  expect(drawn).toEqual(first);
});
