// @vitest-environment jsdom
import { readFileSync } from 'node:fs';
import { cleanup, render } from '@testing-library/react';
import { afterEach, describe, expect, it } from 'vitest';
import { HatchPatterns } from '@/components/night/picture/hatch-patterns';
import { Gauge } from '@/components/night/plate/gauge';
import { ratio } from '@/lib/units/quantity';
import { mixtureWords } from '@/lib/words/mixture';
import { nightCase } from './night-case';

afterEach(cleanup);

const { night, plan, now } = nightCase();

/** A rule of a style sheet, by its selector at the start of a line. */
function rule(sheet: string, selector: string): string {
  const css = readFileSync(`components/night/${sheet}`, 'utf8');
  const rules = css.split('}').filter((text) => text.includes(`\n${selector} {`));
  return rules.map((text) => text.slice(text.indexOf('{') + 1)).join(' ');
}

describe('without colour', () => {
  it('lean and rich are hatched across each other wherever they are hatched', () => {
    const tokens = readFileSync('app/globals.css', 'utf8');
    expect(tokens).toMatch(/--hatch-lean: repeating-linear-gradient\(135deg/);
    expect(tokens).toMatch(/--hatch-rich: repeating-linear-gradient\(45deg/);
    const { container } = render(
      <svg aria-hidden="true">
        <HatchPatterns id="x" />
      </svg>,
    );
    const turned = (state: string) =>
      container.querySelector(`pattern[id$=-${state}]`)?.getAttribute('patternTransform');
    expect([turned('lean'), turned('rich')]).toEqual(['rotate(45)', 'rotate(-45)']);
  });

  it.each([
    ['lean', -0.03, 'LEAN'],
    ['right', 0.001, 'GOOD'],
    ['rich', 0.08, 'RICH'],
  ] as const)('the plate says %s by the place of the pointer and in a word', (state, drift, word) => {
    const mixture = { state, drift: ratio(drift), sizes: 0, at: now, run: null };
    const told = mixtureWords({ mixture, plan, dangers: [], question: null }, night.zone);
    expect(told).toMatchObject({ word, first: true });
    const { container } = render(<Gauge machine={night.machine} mixture={mixture} size={410} />);
    const pointer = container.querySelector('svg svg');
    const share = Number.parseFloat(pointer?.getAttribute('x') ?? '');
    // The banks take 18 of 100 on each side.
    const side = share < 18 ? 'lean' : share > 82 ? 'rich' : 'right';
    expect(side).toBe(state);
    expect(container.textContent).toMatch(/^LEAN.*RICH$/);
  });

  it('words in tables are underlined in waves, twice, or not at all', () => {
    const sheet = 'tables/tables.module.css';
    expect(rule(sheet, '.lean')).toContain('underline wavy');
    expect(rule(sheet, '.rich')).toContain('underline double');
    expect(rule(sheet, '.right')).not.toContain('underline');
  });
});
