import type { FieldsForm } from '@/components/draft/use-fields';
import type { MACHINE, MachineDraft } from '@/lib/fields/machine/machine-rows';

/** What every part of the machine's form is given. */
export type MachineFields = FieldsForm<typeof MACHINE, MachineDraft>;
