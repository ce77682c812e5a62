import type { FieldsForm } from '@/components/draft/use-fields';
import type { EVENT, EventDraft } from '@/lib/fields/event/event-rows';

/** What every part of the event's form is given. */
export type EventFields = FieldsForm<typeof EVENT, EventDraft>;
