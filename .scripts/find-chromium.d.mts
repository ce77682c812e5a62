export const SYSTEM_PLACES: readonly string[];

export function playwrightPlaces(
  wholePath: string,
  namesIn: (folder: string) => readonly string[],
): readonly string[];

export function findChromium(machine: {
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly exists: (path: string) => boolean;
  readonly playwrights: () => readonly string[];
  readonly places?: readonly string[];
}): string | null;

export function chromiumHere(): string | null;
