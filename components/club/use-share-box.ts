'use client';

import { useWriteAll } from '@/components/store/use-write-all';
import type { Box } from '@/lib/carb/machine';
import { withBoxTold } from '@/lib/night/box-told';
import { newId } from '@/lib/store/new-id';
import { counted } from '@/lib/words/listing';

type SharedBox = {
  /** null for a new one. */
  readonly boxId: string | null;
  readonly name: string;
  readonly entries: Box;
  readonly sharers: readonly string[];
  readonly asked: readonly string[];
};

/** Puts a shared box and who takes from it, all as one act. Answers a sentence where it could not. */
export function useShareBox() {
  const writeAll = useWriteAll();
  return async ({ boxId, ...box }: SharedBox): Promise<string | undefined> => {
    const id = boxId ?? newId();
    const put = await writeAll(
      (current) => withBoxTold(current, { boxId: id, ...box }),
      `Box ${box.name} is shared by ${counted(box.sharers.length, 'racer')}.`,
    );
    return put.ok ? undefined : put.reason;
  };
}
