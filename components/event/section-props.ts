import type { DraftState } from '@/components/draft/use-draft';
import type { FormState } from '@/components/draft/use-form';
import type { EventDraft } from './event-draft';

/** What every part of the event's form is given. */
export type EventSectionProps = { readonly draft: DraftState<EventDraft>; readonly form: FormState };
