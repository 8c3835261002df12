// Gives a person a file with a text; nothing leaves the machine.

/** Days in a name sort by themselves. */
const DAY = 10;
/** Some browsers read the text a while later. */
const LATER_MS = 10_000;

export function saveFile(text: string): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([text], { type: 'application/json' }));
  link.download = `both-rails-notebook-${new Date().toISOString().slice(0, DAY)}.json`;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), LATER_MS);
}
