/** A piece of a page as plain data, from where there is no document: text, or an element with what stands in it. */
export type Drawn =
  | string
  | {
      readonly tag: string;
      readonly attributes: Readonly<Record<string, string>>;
      readonly children: readonly Drawn[];
    };

const SVG = 'http://www.w3.org/2000/svg';
const HTML = 'http://www.w3.org/1999/xhtml';

/** The same as nodes of the document. Text stays text, whatever stands in it. */
export function nodeOf(drawn: Drawn, inPicture = false): Element | Text {
  if (typeof drawn === 'string') return document.createTextNode(drawn);
  const picture = inPicture || drawn.tag === 'svg';
  const element = document.createElementNS(picture ? SVG : HTML, drawn.tag);
  for (const [name, value] of Object.entries(drawn.attributes)) element.setAttribute(name, value);
  element.append(...drawn.children.map((child) => nodeOf(child, picture)));
  return element;
}
