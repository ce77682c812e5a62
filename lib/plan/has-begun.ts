import type { RunPlan } from './types';

/** Whether a run has begun, told of or not. */
export const hasBegun = ({ state }: Pick<RunPlan, 'state'>): boolean => state === 'made' || state === 'past';
