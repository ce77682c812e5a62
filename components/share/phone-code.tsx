'use client';

import { boardAddress, followHash } from '@/lib/share/board-address';
import { QrCode } from './qr-code';
import { useLinkOrigin } from './use-link-origin';

type PhoneCodeProps = {
  readonly board: { readonly id: string; readonly followSecret: string };
  readonly title: string;
};

/** The code that leads a phone to a board, and its address in letters for a phone without a camera. */
export function PhoneCode({ board, title }: PhoneCodeProps) {
  const { origin } = useLinkOrigin();
  return <QrCode text={boardAddress(origin, followHash(board))} title={title} />;
}
