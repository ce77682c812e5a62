import { US_UNITS } from '@/lib/units/choice';
import { firstDraft } from './first-draft';

/** A draft with an entry in every list: a kept draft of another shape is not taken up. */
export const TRAIL_SHAPE = firstDraft({ units: US_UNITS, timezone: 'UTC', date: '2027-01-16' });
