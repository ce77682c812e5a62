import { METRIC_UNITS } from '@/lib/units/choice';
import { blankMachineDraft } from './draft-from-machine';
import type { MachineDraft } from './machine-draft';

/** The shape of a machine's draft: one kept by an older version of the app does not have it and is left aside. */
export const MACHINE_SHAPE: MachineDraft = blankMachineDraft(METRIC_UNITS);
