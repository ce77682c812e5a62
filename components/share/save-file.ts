type TextFile = { readonly text: string; readonly type: string; readonly name: string };

/** Hands a text to the browser's downloads. */
export function saveFile({ text, type, name }: TextFile): void {
  const url = URL.createObjectURL(new Blob([text], { type: `${type};charset=utf-8` }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  // The browser has its own hold on the bytes once the download has begun.
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}
