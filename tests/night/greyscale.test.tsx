// @vitest-environment jsdom
import { readFileSync } from 'node:fs';
import { cleanup, render } from '@testing-library/react';
import { afterEach, describe, expect, it } from 'vitest';
import { DriftStrip } from '@/components/night/picture/drift-strip';
import { StateStrip } from '@/components/night/plate/state-strip';
import { type Picture, pictureOf } from '@/lib/plan/night-picture';
import type { DriftState, PlanHour } from '@/lib/plan/types';
import { ratio } from '@/lib/units/quantity';
import { nightCase } from './night-case';

afterEach(cleanup);

const { night, plan } = nightCase();

function pictureOfHours(hours: readonly PlanHour[]): Picture {
  const picture = pictureOf({
    plan: { ...plan, hours },
    machine: night.machine,
    carburettor: 0,
    zone: night.zone,
    place: null,
    span: 'hours',
  });
  if (picture === null) throw new Error('no picture');
  return picture;
}

/** The demo night's hours with every third made rich, so that all three states are there. */
const ALL_STATES = plan.hours.map((hour, i) =>
  i % 3 === 0
    ? { ...hour, baselineState: 'rich' as const, baselineDrift: ratio(Math.abs(hour.baselineDrift)) }
    : hour,
);

/** A rule of a style sheet, by its selector at the start of a line. */
function rule(sheet: string, selector: string): string {
  const css = readFileSync(`components/night/${sheet}`, 'utf8');
  const rules = css.split('}').filter((text) => text.includes(`\n${selector} {`));
  return rules.map((text) => text.slice(text.indexOf('{') + 1)).join(' ');
}

describe('without colour', () => {
  it('a bar of the strip tells lean, right and rich by its hatch, and above or below the line', () => {
    const { container } = render(
      <DriftStrip picture={pictureOfHours(ALL_STATES)} machine={night.machine} width={900} />,
    );
    const turned = (state: DriftState) =>
      container.querySelector(`pattern[id$=-${state}]`)?.getAttribute('patternTransform');
    expect([turned('lean'), turned('rich')]).toEqual(['rotate(45)', 'rotate(-45)']);
    const hatches = [...container.querySelectorAll('rect[fill^=url]')].map(
      (bar) => /-(lean|rich)\)$/.exec(bar.getAttribute('fill') ?? '')?.[1],
    );
    expect(new Set(hatches)).toEqual(new Set(['lean', 'rich']));
    const plain = [...container.querySelectorAll('g > rect:not([fill^=url])')];
    expect(plain.length).toBeGreaterThan(0);
  });

  it('the strip names each stretch of the night', () => {
    const { container } = render(
      <DriftStrip picture={pictureOfHours(plan.hours)} machine={night.machine} width={900} />,
    );
    const words = [...container.querySelectorAll('text')].map(({ textContent }) => textContent);
    expect(words).toEqual(expect.arrayContaining(['right', 'lean']));
  });

  it.each(['lean', 'right', 'rich'] as const)('the plate says %s in its own place of three', (state) => {
    const { container } = render(<StateStrip state={state} />);
    const places = [...container.querySelectorAll('span > span')].map(({ textContent }) => textContent);
    expect(places).toEqual(['lean', 'right', 'rich']);
    const marked = [...container.querySelectorAll('div > span')].filter(
      ({ classList }) => classList.length > 1,
    );
    expect(marked.map(({ textContent }) => textContent)).toEqual([state]);
  });

  it('lean and rich are hatched across each other, right is plain', () => {
    const sheet = 'plate/state-strip.module.css';
    expect(rule(sheet, '.lean')).toContain('repeating-linear-gradient(135deg');
    expect(rule(sheet, '.rich')).toContain('repeating-linear-gradient(45deg');
    expect(rule(sheet, '.right')).not.toContain('gradient');
  });

  it('words in tables are underlined in waves, twice, or not at all', () => {
    const sheet = 'tables/tables.module.css';
    expect(rule(sheet, '.lean')).toContain('underline wavy');
    expect(rule(sheet, '.rich')).toContain('underline double');
    expect(rule(sheet, '.right')).not.toContain('underline');
  });
});
