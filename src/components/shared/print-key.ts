/** The keys that print do this instead, which prints once all is there that goes on paper; what it gives back ends that. */
export function onPrintKey(print: () => void): () => void {
  const press = (event: KeyboardEvent): void => {
    if (event.key.toLowerCase() !== 'p' || event.altKey || event.shiftKey || event.ctrlKey === event.metaKey) return;
    event.preventDefault();
    print();
  };
  addEventListener('keydown', press);
  return () => removeEventListener('keydown', press);
}
