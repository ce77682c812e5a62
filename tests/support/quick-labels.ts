const LABELABLE = 'button, input:not([type=hidden]), meter, output, progress, select, textarea';
type Labelled = HTMLButtonElement | HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement;

/** What a label is for (HTML, "The label element"): by its `for`, otherwise the first control within. */
function controlOf(label: HTMLLabelElement): HTMLElement | null {
  const named = label.getAttribute('for');
  if (named === null) return label.querySelector<HTMLElement>(LABELABLE);
  const found = label.ownerDocument.getElementById(named);
  return found?.matches(LABELABLE) ? found : null;
}

/** The labels of a control, those by its id before the one around it; not a live list, which nothing here wants. */
function labelsOf(control: Labelled): readonly HTMLLabelElement[] {
  const around = control.closest('label');
  const named =
    control.id === ''
      ? []
      : control.ownerDocument.querySelectorAll<HTMLLabelElement>(
          `label[for="${control.id.replace(/["\\]/g, '\\$&')}"]`,
        );
  const labels = [...named, ...(around === null ? [] : [around])];
  return labels.filter((label, i) => controlOf(label) === control && labels.indexOf(label) === i);
}

/**
 * Finds labels by the document's own index. jsdom walks the whole tree for each label, and for each control all labels:
 * one field looked up by its label took a twentieth of a second in a long form.
 */
export function quickenLabels(): void {
  const put = (prototype: object, name: string, get: (this: never) => unknown) =>
    Object.defineProperty(prototype, name, { get, configurable: true });
  put(HTMLLabelElement.prototype, 'control', function (this: HTMLLabelElement) {
    return controlOf(this);
  });
  for (const kind of [HTMLButtonElement, HTMLInputElement, HTMLSelectElement, HTMLTextAreaElement])
    put(kind.prototype, 'labels', function (this: Labelled) {
      return this.getAttribute('type') === 'hidden' ? null : labelsOf(this);
    });
}
