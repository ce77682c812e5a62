export function withShiftedClock(nodeOptions?: string): string;
