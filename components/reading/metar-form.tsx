'use client';

import { useState } from 'react';
import { Button } from '@/components/ui/button';
import { NumberField } from '@/components/ui/number-field';
import { Columns, Stack } from '@/components/ui/stack';
import { TextArea } from '@/components/ui/text-area';
import { NUMBER_KINDS } from '@/lib/fields/number-kinds';
import type { UnitChoice } from '@/lib/units/choice';
import type { Metre } from '@/lib/units/quantity';
import type { Offer } from '@/lib/weather/stations/offer';
import type { PlannedNight } from '@/lib/words/what-moved';
import type { ReportDraft } from './read-report';

type MetarFormProps = {
  readonly units: UnitChoice;
  readonly site: Metre;
  readonly planned: PlannedNight;
  readonly onOffer: (offer: Offer) => void;
};

const BLANK: ReportDraft = { report: '', distance: '', elevation: '' };

/** An airfield's report, pasted or typed, and where the airfield lies. It is offered, not used. */
export function MetarForm({ units, site, planned, onOffer }: MetarFormProps) {
  const [draft, setDraft] = useState(BLANK);
  const [errors, setErrors] = useState<Readonly<Record<string, string>>>({});
  const set = (name: keyof ReportDraft) => (text: string) => setDraft({ ...draft, [name]: text });
  async function read() {
    // Few ever paste one: the reader is loaded when it is first needed.
    const { readReport } = await import('./read-report');
    const { now, voice } = planned;
    const answer = readReport(draft, { now, site, units, voice });
    setErrors(answer.errors);
    if (answer.value !== null) onOffer(answer.value);
  }
  return (
    <Stack>
      <TextArea
        label="Airfield report (METAR)"
        hint="Such as KXYZ 162255Z 18004KT 10SM CLR M11/M14 A3005."
        error={errors.report}
        rows={3}
        autoCapitalize="characters"
        spellCheck={false}
        value={draft.report}
        onChange={set('report')}
      />
      <Columns>
        <NumberField
          label="How far away it is"
          hint="Left empty, it is taken for far away."
          error={errors.distance}
          unit={NUMBER_KINDS.way.unit(units)}
          value={draft.distance}
          onChange={set('distance')}
        />
        <NumberField
          label="Elevation of the airfield"
          hint="Left empty, it is taken as the track’s."
          error={errors.elevation}
          unit={units.elevation}
          value={draft.elevation}
          onChange={set('elevation')}
        />
      </Columns>
      <Button disabled={draft.report.trim() === ''} onClick={() => void read()}>
        Read the report
      </Button>
    </Stack>
  );
}
