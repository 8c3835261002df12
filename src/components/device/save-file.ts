// Gives a person a file with a text; nothing leaves the machine.

/** Days in a name sort by themselves. */
const DAY = 10;
/** Some browsers read the text a while later. */
const LATER_MS = 10_000;

const TYPES = { json: 'application/json', csv: 'text/csv' } as const;

/** `name`: what the file’s name says of it, before the day. */
export function saveFile(text: string, name = 'notebook', kind: keyof typeof TYPES = 'json'): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([text], { type: TYPES[kind] }));
  link.download = `both-rails-${name}-${new Date().toISOString().slice(0, DAY)}.${kind}`;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), LATER_MS);
}
