// @vitest-environment jsdom
import { cleanup, fireEvent, render, screen } from '@testing-library/react';
import { useState } from 'react';
import { afterEach, describe, expect, it } from 'vitest';
import { useChartFrame } from '@/components/night/picture/chart-frame';
import { HourWalk } from '@/components/night/picture/hour-walk';
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

function pictureOfRuns(): Picture {
  const picture = pictureOf({
    plan,
    machine: night.machine,
    carburettor: 0,
    zone: night.zone,
    place: null,
    span: 'runs',
  });
  if (picture === null) throw new Error('no picture');
  return picture;
}

function Walk({ picture }: { readonly picture: Picture }) {
  const [cursor, setCursor] = useState<Instant | null>(null);
  const frame = useChartFrame(picture, 360);
  return <HourWalk {...{ picture, plan, voice, now, cursor, frame }} onWalk={setCursor} />;
}

/** What a screen reader says at each stop of the slider. */
function spoken(): readonly string[] {
  const slider = screen.getByRole<HTMLInputElement>('slider', { name: 'Walk the hours' });
  return Array.from({ length: Number(slider.max) + 1 }, (_, stop) => {
    fireEvent.change(slider, { target: { value: String(stop) } });
    return (slider.getAttribute('aria-valuetext') ?? '').replaceAll('\u00a0', ' ');
  });
}

const clock = new Intl.DateTimeFormat('en-GB', {
  timeZone: night.zone,
  hour: '2-digit',
  minute: '2-digit',
  hourCycle: 'h23',
});

describe('the walk through the hours', () => {
  it('is one tab stop', () => {
    const { container } = render(<Walk picture={pictureOfRuns()} />);
    const stops = container.querySelectorAll('a[href], button, input, select, textarea, [tabindex]');
    expect([...stops]).toEqual([screen.getByRole('slider')]);
  });

  it('starts at the hour nearest to now', () => {
    render(<Walk picture={pictureOfRuns()} />);
    expect(screen.getByRole('slider').getAttribute('aria-valuetext')).toMatch(/^18:00:/);
  });

  it('says of every hour in the picture its time, air, ideal and drift, and no two alike', () => {
    const picture = pictureOfRuns();
    render(<Walk picture={picture} />);
    const hours = picture.hours.filter(({ at }) => at >= picture.from && at <= picture.to);
    const said = spoken();
    expect(said).toHaveLength(hours.length);
    expect(new Set(said).size).toBe(hours.length);
    hours.forEach(({ at, air, ideal, baselineDrift, baselineState }, i) => {
      const [, time, celsius, size, drift, state] =
        /^(\S+): (\S+) °C, ideal (\d+) \(\d+ to \d+\)\. Baseline [\d ]+: (\S+) %, (\w+)\. As planned: risk of lean (?:under )?\d+ in 64\.$/.exec(
          said[i] ?? '',
        ) ?? [];
      const number = (text = '') => Number(text.replace('−', '-'));
      expect(time).toBe(clock.format(at));
      // Half of the last digit shown.
      expect(Math.abs(number(celsius) - (air.temperature - 273.15))).toBeLessThanOrEqual(0.5);
      expect(Math.abs(number(size) - (ideal[0] ?? 0))).toBeLessThanOrEqual(0.5);
      expect(Math.abs(number(drift) - baselineDrift * 100)).toBeLessThanOrEqual(0.05001);
      expect(state).toBe(baselineState === 'right' ? 'good' : baselineState);
    });
  });
});
