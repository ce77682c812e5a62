export const ROOT: string;
export function hashOf(paths: readonly string[]): string;
export function hashOfSources(): string;
