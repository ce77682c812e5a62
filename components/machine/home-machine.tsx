'use client';

import { useState } from 'react';
import { EditorForm } from '@/components/draft/editor-form';
import type { FieldsOf } from '@/components/draft/fields-of';
import { useFields } from '@/components/draft/use-fields';
import { usePreferences } from '@/components/store/use-preferences';
import { useWrite } from '@/components/store/use-write';
import { Section } from '@/components/ui/section';
import { Columns } from '@/components/ui/stack';
import { Way } from '@/components/ui/way';
import { HOME } from '@/lib/fields/machine/home-rows';
import { readHome } from '@/lib/fields/machine/read-home';
import { blankDraft } from '@/lib/fields/table-values';
import { newId } from '@/lib/store/new-id';
import { newMachineRecord } from '@/lib/store/new-machine-record';
import type { UnitChoice } from '@/lib/units/choice';
import { SWAP_CAUTION_LINE } from '@/lib/words/cautions';
import { HOME_DONE, HOME_INTRO, HOME_NAME, HOME_PARTS } from '@/lib/words/home-machine';
import { ClipDrawing } from './clip-drawing';
import styles from './machines-page.module.css';
import { ScrewDrawing } from './screw-drawing';

type HomeMachineProps = { readonly units: UnitChoice; readonly onClose: () => void };

/** A first machine for whoever knows no jets: what each part is, where it is read off, and nothing that needs more. */
export function HomeMachine({ units, onClose }: HomeMachineProps) {
  const write = useWrite();
  const { changePreferences } = usePreferences();
  const [added, setAdded] = useState(false);
  const { draft, form, field } = useFields({
    key: 'machine.home',
    table: HOME,
    initial: () => blankDraft(HOME, units),
    read: readHome,
    onSave: async (machine) => {
      const id = newId();
      const refused = await write.add('machines', newMachineRecord(machine), null, id);
      if (refused !== undefined) return refused;
      await changePreferences({ machineId: id });
      setAdded(true);
      return undefined;
    },
  });
  if (added) return <Added />;
  return (
    <main className={styles.page}>
      <h1>It runs right at home</h1>
      <p>{HOME_INTRO}</p>
      <EditorForm title={HOME_NAME} form={form} draft={draft} saveLabel="Save machine" onCancel={onClose}>
        <HomeFields field={field} />
      </EditorForm>
    </main>
  );
}

/** Part by part, in the order in which they are reached. */
function HomeFields({ field }: Pick<FieldsOf<typeof HOME>, 'field'>) {
  return (
    <>
      <p>{SWAP_CAUTION_LINE}</p>
      <Section title="Main jet">
        <p>{HOME_PARTS.main}</p>
        {field('carburettors')}
        {field('main')}
      </Section>
      <Section title="The air it runs right in">
        <p>{HOME_PARTS.air}</p>
        <Columns>
          {field('temperature')}
          {field('elevation')}
        </Columns>
      </Section>
      <Section title="Pilot jet and its screw">
        <p>{HOME_PARTS.pilot}</p>
        <Columns>
          <ScrewDrawing screw="fuel" />
          <ScrewDrawing screw="air" />
        </Columns>
        {field('pilot')}
        {field('screw')}
        {field('turns')}
      </Section>
      <Section title="Needle clip">
        <p>{HOME_PARTS.clip}</p>
        <ClipDrawing />
        {field('groove')}
      </Section>
    </>
  );
}

/** What was added, and the way on. */
function Added() {
  return (
    <main className={styles.page}>
      <h1>{HOME_NAME} is added</h1>
      <p>{HOME_DONE}</p>
      <Way kind="firm" href="/trail#card">
        Its jet card
      </Way>
      <Way href="/machines">Machines</Way>
    </main>
  );
}
