import type { FieldsForm } from '@/components/draft/use-fields';
import { Choice } from '@/components/ui/choice';
import { Columns } from '@/components/ui/stack';
import { leanestVerdict } from '@/lib/carb/verdicts';
import { cylindersOf, LOG, type LogDraft } from '@/lib/fields/log/log-rows';
import { CYLINDER_VERDICTS } from './cylinder-dialog';

type VerdictFieldsProps = FieldsForm<typeof LOG, LogDraft> & { readonly cylinders: number };

/** How the run was, who says so, and what the clock said. */
export function VerdictFields({ draft, field, cylinders }: VerdictFieldsProps) {
  const { verdict } = draft.value;
  const leanest = leanestVerdict(cylindersOf(draft.value, cylinders));
  const offSide = leanest === 'lean' || leanest === 'rich';
  const { options = [] } = LOG.top.rows.verdict;
  return (
    <>
      {field('verdict', {
        options:
          cylinders > 1 || verdict === 'each' ? options : options.filter(({ value }) => value !== 'each'),
      })}
      {verdict === 'each' ? <EachCylinder draft={draft} cylinders={cylinders} /> : null}
      <Columns>
        {offSide
          ? field('sizes', {
              hint:
                verdict === 'each'
                  ? `Of the ${leanest} ones. Halves count. Empty: about one.`
                  : 'Halves count. Empty: about one.',
            })
          : null}
        {field('judgedBy')}
        {field('seconds')}
        {field('speed')}
      </Columns>
      {field('note')}
    </>
  );
}

function EachCylinder({ draft, cylinders }: Pick<VerdictFieldsProps, 'draft' | 'cylinders'>) {
  const said = cylindersOf(draft.value, cylinders).map((each) => each ?? ('none' as const));
  return said.map((verdict, place) => (
    <Choice
      // biome-ignore lint/suspicious/noArrayIndexKey: cylinders are told apart by their place
      key={place}
      label={`Cylinder ${place + 1}`}
      value={verdict}
      options={CYLINDER_VERDICTS}
      onChange={(next) =>
        draft.change('verdicts', (before) => ({
          ...before,
          verdicts: said.map((each, i) => (i === place ? next : each)),
        }))
      }
    />
  ));
}
