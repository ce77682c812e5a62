import type { ChildProcess, SpawnOptions } from 'node:child_process';

export type Group = {
  readonly child: ChildProcess;
  /** The exit code; rejects where the program cannot be started at all. */
  readonly ended: Promise<number>;
  readonly end: () => Promise<void>;
};

export function startGroup(command: string, args: readonly string[], options?: SpawnOptions): Group;
export function runGroup(command: string, args: readonly string[], options?: SpawnOptions): Promise<number>;
export function stopWatchingOwnEnd(): void;
