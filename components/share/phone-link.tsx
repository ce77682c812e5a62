'use client';

import { boardAddress, followHash } from '@/lib/share/board-address';
import { BOARD_WORDS } from '@/lib/words/board-page';
import { CopyField } from './copy-field';
import { useLinkOrigin } from './use-link-origin';

type PhoneLinkProps = {
  readonly board: { readonly id: string; readonly followSecret: string };
  readonly night: string;
};

/** The link to hand to phones, and what they can do with it. */
export function PhoneLink({ board, night }: PhoneLinkProps) {
  const { origin, about } = useLinkOrigin();
  return (
    <>
      <CopyField
        label="Link for your racers"
        hint={BOARD_WORDS.link}
        text={boardAddress(origin, followHash(board))}
        shareTitle={night}
      />
      {about}
    </>
  );
}
