'use client';

import { type RefObject, useEffect, useRef, useState } from 'react';
import { type TextWidth, textWidthIn } from '@/components/ui/text-width';
import type { WallRoom } from '@/lib/club/wall-pages';

/** Read across a trailer: a figure is at least this share of the height of the screen. */
const FIGURE_SHARE = 0.05;
const WEIGHT = 800;

export type Room = { readonly room: WallRoom; readonly measure: TextWidth };

/** The room an element has, and how wide words are in its face; null until both have been measured. */
export function useRoom<E extends HTMLElement>(): {
  readonly ref: RefObject<E | null>;
  readonly room: Room | null;
} {
  const ref = useRef<E>(null);
  const [room, setRoom] = useState<Room | null>(null);
  useEffect(() => {
    const element = ref.current;
    if (element === null || typeof ResizeObserver === 'undefined') return;
    const look = () => {
      const { width, height } = element.getBoundingClientRect();
      setRoom({
        room: { width, height, figure: window.innerHeight * FIGURE_SHARE },
        measure: textWidthIn(getComputedStyle(element).fontFamily, WEIGHT),
      });
    };
    const observer = new ResizeObserver(look);
    observer.observe(element);
    // Words of a face that comes late are of another width.
    document.fonts.addEventListener('loadingdone', look);
    return () => {
      observer.disconnect();
      document.fonts.removeEventListener('loadingdone', look);
    };
  }, []);
  return { ref, room };
}
