'use client';

import { useState } from 'react';
import { Button } from '@/components/ui/button';
import { Notice } from '@/components/ui/notice';
import { saveBlob } from '@/components/ui/save-file';
import { Section } from '@/components/ui/section';
import { Select } from '@/components/ui/select';
import { ButtonRow } from '@/components/ui/stack';
import type { Briefing } from '@/lib/club/briefing';
import type { ClubRecords } from '@/lib/night/club';
import { type MeasureText, type SheetPicture, sheetPicture } from '@/lib/share/sheet-picture';
import type { Instant } from '@/lib/time/instant';
import type { ClockZone } from '@/lib/time/zone';
import type { UnitChoice } from '@/lib/units/choice';
import type { ClubNames } from '@/lib/words/club';
import { racerFacts } from '@/lib/words/print-facts';
import { SENDING } from '@/lib/words/sending';
import { type SheetRow, sheetRows } from '@/lib/words/sheet-rows';

type SheetPicturesProps = {
  readonly records: ClubRecords;
  readonly briefing: Briefing;
  readonly names: ClubNames;
  readonly zone: ClockZone;
  readonly now: Instant;
  readonly units: UnitChoice;
};

/** One racer's sheet as a picture, to save or to hand to the phone's own sheet for sharing. */
export function SheetPictures({ records, briefing, names, zone, now, units }: SheetPicturesProps) {
  const { planned } = briefing;
  const [chosen, setChosen] = useState('');
  const [failed, setFailed] = useState(false);
  const one = planned.find(({ racer }) => racer.id === chosen) ?? planned[0];
  if (one === undefined) return null;
  const { id } = one.racer;
  const { event } = records.event.value;
  async function take(give: (picture: Blob, name: string) => Promise<void> | void) {
    if (one === undefined) return;
    const facts = racerFacts(records, id);
    const picture = await drawSheet(sheetRows(one, { briefing, names, event, facts, now, units, zone }));
    setFailed(picture === null);
    if (picture !== null) await give(picture, `${fileName(names.racer(id))}.png`);
  }
  return (
    <Section title="One sheet as a picture" level={3}>
      <p>{SENDING.picture}</p>
      {failed ? <Notice tone="caution" title={SENDING.noPicture} /> : null}
      <Select
        label="Whose sheet"
        value={id}
        options={planned.map(({ racer }) => ({ value: racer.id, label: names.racer(racer.id) }))}
        onChange={setChosen}
      />
      <ButtonRow>
        <Button onClick={() => void take((blob, name) => saveBlob({ blob, name }))}>
          Save the picture (.png)
        </Button>
        {typeof navigator.canShare === 'function' ? (
          <Button onClick={() => void take(sharePicture)}>Send the picture</Button>
        ) : null}
      </ButtonRow>
    </Section>
  );
}

async function sharePicture(blob: Blob, name: string): Promise<void> {
  const files = [new File([blob], name, { type: 'image/png' })];
  try {
    if (navigator.canShare({ files })) await navigator.share({ files });
    else saveBlob({ blob, name });
  } catch (error) {
    // Whoever closes the sheet has changed their mind; whatever else it was, the picture is not lost.
    if (!(error instanceof DOMException && error.name === 'AbortError')) saveBlob({ blob, name });
  }
}

/** A name without what file systems refuse. */
function fileName(name: string): string {
  return name.replace(/[^\p{L}\p{N} -]/gu, '').trim() || 'sheet';
}

/** A PNG of a sheet, drawn here; null where the browser gives no canvas or makes no picture of it. */
async function drawSheet(rows: readonly SheetRow[]): Promise<Blob | null> {
  const canvas = document.createElement('canvas');
  const pen = canvas.getContext('2d');
  if (pen === null) return null;
  // Letters come from the page's own face, once it is there.
  await document.fonts.ready;
  const family = getComputedStyle(document.body).fontFamily;
  const fontOf = (size: number, bold: boolean): string => `${bold ? 700 : 400} ${size}px ${family}`;
  const measure: MeasureText = (text, size, bold) => {
    pen.font = fontOf(size, bold);
    return pen.measureText(text).width;
  };
  const picture = sheetPicture(rows, measure);
  draw(canvas, pen, picture, fontOf);
  return new Promise((made) => canvas.toBlob(made, 'image/png'));
}

function draw(
  canvas: HTMLCanvasElement,
  pen: CanvasRenderingContext2D,
  { width, height, texts }: SheetPicture,
  fontOf: (size: number, bold: boolean) => string,
): void {
  canvas.width = width;
  canvas.height = height;
  pen.fillStyle = '#ffffff';
  pen.fillRect(0, 0, width, height);
  pen.fillStyle = '#000000';
  for (const { text, x, y, size, bold } of texts) {
    pen.font = fontOf(size, bold);
    pen.fillText(text, x, y);
  }
}
