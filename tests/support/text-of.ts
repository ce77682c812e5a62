/** What is read of an element: a space that keeps two words on one line is a space like any other. */
export function textOf(element: Element | null | undefined): string {
  return (element?.textContent ?? '').replaceAll('\u00a0', ' ');
}
