type TextFile = { readonly text: string; readonly type: string; readonly name: string };

/** Hands a text to the browser's downloads, as if a link to it had been followed. */
export function saveFile({ text, type, name }: TextFile): void {
  saveBlob({ blob: new Blob([text], { type: `${type};charset=utf-8` }), name });
}

/** The same for what is not text. */
export function saveBlob({ blob, name }: { readonly blob: Blob; readonly name: string }): void {
  const url = URL.createObjectURL(blob);
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  // Not at once: some browsers read it only after the click is through, and then hold the bytes themselves.
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}
