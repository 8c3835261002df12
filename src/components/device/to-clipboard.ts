// Copying: a browser may refuse what comes later than the press, so a text that is still being made is handed over as a promise.

/** Copies a text. Rejects where the browser refuses, or as the text does. */
export async function toClipboard(text: string | Promise<string>): Promise<void> {
  if (typeof text === 'string') return navigator.clipboard.writeText(text);
  if (typeof ClipboardItem === 'undefined') return navigator.clipboard.writeText(await text);
  const plain = 'text/plain';
  const blob = text.then((written) => new Blob([written], { type: plain }));
  const taken = navigator.clipboard.write([new ClipboardItem({ [plain]: blob })]);
  // What is wrong with the text is told, not what the clipboard says to that.
  for (const follows of [blob, taken]) follows.catch(() => undefined);
  await text;
  await taken;
}
