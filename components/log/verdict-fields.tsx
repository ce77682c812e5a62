import type { Part } from '@/components/draft/part';
import type { FormState } from '@/components/draft/use-form';
import { Choice } from '@/components/ui/choice';
import { NumberField } from '@/components/ui/number-field';
import { Select } from '@/components/ui/select';
import { Columns } from '@/components/ui/stack';
import { TextField } from '@/components/ui/text-field';
import type { JudgedBy } from '@/lib/carb/jet-evidence';
import { leanestVerdict } from '@/lib/carb/verdicts';
import { judgedByText, speedUnit } from '@/lib/words/log';
import { CYLINDER_VERDICTS } from './cylinder-dialog';
import { cylindersOf, type LogDraft } from './log-draft';

type Option = { readonly value: LogDraft['verdict']; readonly label: string };

const VERDICTS: readonly Option[] = [
  { value: 'lean', label: 'Lean' },
  { value: 'right', label: 'Right' },
  { value: 'rich', label: 'Rich' },
  { value: 'none', label: 'Not judged' },
];
const EACH: Option = { value: 'each', label: 'Cylinder by cylinder' };

const JUDGES: readonly JudgedBy[] = [
  'plugs',
  'exhaust-temperature',
  'wideband',
  'piston-wash',
  'clock',
  'feel',
];

type VerdictFieldsProps = {
  readonly draft: Part<LogDraft>;
  readonly form: FormState;
  readonly cylinders: number;
};

/** How the run was, who says so, and what the clock said. */
export function VerdictFields({ draft, form, cylinders }: VerdictFieldsProps) {
  const { value, set } = draft;
  const leanest = leanestVerdict(cylindersOf(value, cylinders));
  const offSide = leanest === 'lean' || leanest === 'rich';
  return (
    <>
      <Choice
        {...form.field('verdict')}
        value={value.verdict}
        options={cylinders > 1 || value.verdict === 'each' ? [...VERDICTS, EACH] : VERDICTS}
        onChange={(verdict) => set('verdict', verdict)}
      />
      {value.verdict === 'each' ? <EachCylinder draft={draft} cylinders={cylinders} /> : null}
      <Columns>
        {offSide ? (
          <NumberField
            {...form.field('sizes')}
            hint={
              value.verdict === 'each'
                ? `Of the ${leanest} ones. Halves count. Empty: about one.`
                : 'Halves count. Empty: about one.'
            }
            value={value.sizes}
            onChange={(sizes) => set('sizes', sizes)}
          />
        ) : null}
        <Select
          {...form.field('judgedBy')}
          value={value.judgedBy}
          options={[
            { value: 'none', label: 'Not said' },
            ...JUDGES.map((judge) => ({ value: judge, label: judgedByText(judge) })),
          ]}
          onChange={(judge) => set('judgedBy', judge)}
        />
        <NumberField
          {...form.field('seconds')}
          unit="s"
          value={value.seconds}
          onChange={(seconds) => set('seconds', seconds)}
        />
        <NumberField
          {...form.field('speed')}
          unit={speedUnit(value.units)}
          value={value.speed}
          onChange={(speed) => set('speed', speed)}
        />
      </Columns>
      <TextField
        {...form.field('note')}
        maxLength={1000}
        value={value.note}
        onChange={(note) => set('note', note)}
      />
    </>
  );
}

function EachCylinder({ draft, cylinders }: Omit<VerdictFieldsProps, 'form'>) {
  const { value, set } = draft;
  const said = cylindersOf(value, cylinders).map((each) => each ?? ('none' as const));
  return said.map((verdict, place) => (
    <Choice
      // biome-ignore lint/suspicious/noArrayIndexKey: cylinders are told apart by their place
      key={place}
      label={`Cylinder ${place + 1}`}
      value={verdict}
      options={CYLINDER_VERDICTS}
      onChange={(next) =>
        set(
          'verdicts',
          said.map((each, i) => (i === place ? next : each)),
        )
      }
    />
  ));
}
