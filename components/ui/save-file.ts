/** Hands a text over as a file, as if a link to it had been followed. */
export function saveFile({
  name,
  type,
  text,
}: {
  readonly name: string;
  readonly type: string;
  readonly text: string;
}): void {
  const url = URL.createObjectURL(new Blob([text], { type }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  // Not at once: some browsers read it only after the click is through.
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}
