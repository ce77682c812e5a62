export function withShiftedClock(nodeOptions?: string): string;
export function shiftTo(instant: number): string;
