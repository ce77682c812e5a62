import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { ROOT } from '@/tests/support/source-tree';

const FOLDER = join(ROOT, 'app', 'face');
const faces = readdirSync(FOLDER).filter((name) => name.endsWith('.woff2'));
const css = readFileSync(join(ROOT, 'app', 'globals.css'), 'utf8');

describe('the face of the pages', () => {
  it('comes with its licence, the SIL Open Font License 1.1', () => {
    expect(readFileSync(join(FOLDER, 'LICENSE'), 'utf8')).toContain('SIL Open Font License, Version 1.1');
  });

  it('weighs at most 30 kB, all weights together', () => {
    expect(faces.length).toBeGreaterThan(0);
    const bytes = faces.reduce((sum, name) => sum + statSync(join(FOLDER, name)).size, 0);
    expect(bytes).toBeLessThanOrEqual(30_000);
  });

  it('is ours to send, shown as soon as it comes, and stood in for by one of its own size until then', () => {
    for (const name of faces) expect(css).toContain(`url("./face/${name}")`);
    expect(css).not.toMatch(/url\("?https?:/);
    expect(css).toContain('font-display: swap');
    expect(css).toMatch(/src: local\([\s\S]*size-adjust: \d/);
  });
});
