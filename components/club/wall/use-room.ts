'use client';

import { type RefObject, useEffect, useRef, useState } from 'react';
import type { WallRoom } from '@/lib/club/wall-pages';

/** Read across a trailer: a figure is at least this share of the height of the screen. */
const FIGURE_SHARE = 0.05;

/** Width of a text in sizes of its own type, in the weight it is shown in. */
export type TextWidth = (text: string) => number;

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
        measure: measureIn(getComputedStyle(element).fontFamily),
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

const TRIED_PX = 100;
/** Where nothing can be drawn: as wide as bold capitals of a plain face. */
const GUESSED_EM = 0.7;

function measureIn(family: string): TextWidth {
  const context = document.createElement('canvas').getContext('2d');
  if (context === null) return (text) => text.length * GUESSED_EM;
  context.font = `800 ${TRIED_PX}px ${family}`;
  // Figures of our page are all as wide as a nought; a canvas would draw a 1 narrower.
  return (text) => context.measureText(text.replace(/\d/g, '0')).width / TRIED_PX;
}
