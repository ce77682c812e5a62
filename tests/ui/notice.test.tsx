import { renderToStaticMarkup } from 'react-dom/server';
import { expect, it } from 'vitest';
import { Notice } from '@/components/ui/notice';

it('keeps its title and its words apart, also where both stand on one line', () => {
  const markup = renderToStaticMarkup(
    <Notice tone="caution" title="No forecast came.">
      <p>Try again in 60 seconds.</p>
    </Notice>,
  );
  expect(markup.replace(/<[^>]*>/g, '')).toBe('Caution No forecast came. Try again in 60 seconds.');
});
