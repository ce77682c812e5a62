import type { ComponentType } from 'react';
import { renderToReadableStream } from 'react-dom/server';
import { Frame } from '@/components/shell/frame';
import { drawAt } from './navigation';
import { OnlyAwake } from './only-awake';

/** A page as HTML, for the build: what stands in its body before a script has run. Throws what the page throws. */
export async function drawPage(path: string, Page: ComponentType): Promise<string> {
  const faults: unknown[] = [];
  drawAt(path);
  const drawing = await renderToReadableStream(
    <Frame>
      <Page />
    </Frame>,
    {
      // In one piece: a part that comes later would need a script of its own in the page.
      progressiveChunkSize: Number.POSITIVE_INFINITY,
      onError: (fault) => {
        if (fault instanceof OnlyAwake) return fault.digest;
        faults.push(fault);
      },
    },
  );
  await drawing.allReady;
  const html = await new Response(drawing).text();
  if (faults.length > 0) throw faults[0];
  return html;
}
