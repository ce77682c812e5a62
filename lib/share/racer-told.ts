import type { EventRecord } from '@/lib/store/records';
import type { SharedMachine } from './shared-night';

/** Who rides a machine at the event, as it travels with it; nothing where nobody said. */
export function racerTold({ club }: EventRecord, machineId: string): Pick<SharedMachine, 'racer' | 'bib'> {
  const { name = '', bib } = club?.racers[machineId] ?? {};
  return { ...(name === '' ? {} : { racer: name }), ...(bib === undefined ? {} : { bib }) };
}
