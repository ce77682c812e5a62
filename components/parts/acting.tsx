'use client';

import { useState } from 'react';
import { Button } from '@/components/ui/button';
import { Dialog } from '@/components/ui/dialog';
import { FileButton } from '@/components/ui/file-button';
import { Section } from '@/components/ui/section';
import { ButtonRow } from '@/components/ui/stack';
import { useToast } from '@/components/ui/toast';
import { Way } from '@/components/ui/way';

const KINDS = ['primary', 'plain', 'quiet'] as const;
const SIZES = ['normal', 'large', 'act', 'decide'] as const;

/** What is pressed, and what opens by it. */
export function Acting() {
  return (
    <Section title="Acting">
      {SIZES.map((size) => (
        <ButtonRow key={size}>
          {KINDS.map((kind) => (
            <Button key={kind} kind={kind} size={size}>
              {kind}, {size}
            </Button>
          ))}
          <Button size={size} disabled>
            disabled
          </Button>
        </ButtonRow>
      ))}
      <Button wide>wide</Button>
      <ButtonRow>
        <Way href="#acting">A way, plain</Way>
        <Way href="#acting" kind="firm">
          A way, firm
        </Way>
        <FileButton label="A file" accept=".csv" onFile={() => undefined} />
        <Opened />
      </ButtonRow>
    </Section>
  );
}

function Opened() {
  const toast = useToast();
  const [open, setOpen] = useState(false);
  return (
    <>
      <Button onClick={() => setOpen(true)}>Dialog</Button>
      <Button onClick={() => toast({ text: 'It is done.' })}>Toast</Button>
      <Button onClick={() => toast({ text: 'It is done.', act: { label: 'Undo', do: () => undefined } })}>
        Toast with a way back
      </Button>
      <Dialog
        title="A dialog"
        open={open}
        onClose={() => setOpen(false)}
        footer={
          <Button kind="primary" onClick={() => setOpen(false)}>
            Done
          </Button>
        }
      >
        <p>What a dialog says.</p>
      </Dialog>
    </>
  );
}
