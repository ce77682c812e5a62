/** Width of a text in sizes of its own type, in the weight it is shown in. */
export type TextWidth = (text: string) => number;

const TRIED_PX = 100;
/** Where nothing can be drawn: as wide as bold capitals of a plain face. */
const GUESSED_EM = 0.7;

export function textWidthIn(family: string, weight: number): TextWidth {
  const context = document.createElement('canvas').getContext('2d');
  if (context === null) return (text) => text.length * GUESSED_EM;
  context.font = `${weight} ${TRIED_PX}px ${family}`;
  // Figures of our page are all as wide as a nought; a canvas would draw a 1 narrower.
  return (text) => context.measureText(text.replace(/\d/g, '0')).width / TRIED_PX;
}
