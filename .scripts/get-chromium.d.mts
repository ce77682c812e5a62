export type Way = {
  readonly says: string;
  readonly steps: readonly (readonly [command: string, args: readonly string[]])[];
};

export const IN_WORDS: string;
export function waysToChromium(machine: {
  readonly isRoot: boolean;
  readonly hasAptGet: boolean;
}): readonly Way[];
