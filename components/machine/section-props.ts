import type { DraftState } from '@/components/draft/use-draft';
import type { FormState } from '@/components/draft/use-form';
import type { MachineDraft } from './machine-draft';

/** What every part of the machine's form is given. */
export type MachineSectionProps = { readonly draft: DraftState<MachineDraft>; readonly form: FormState };
