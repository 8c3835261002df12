// A link that acts on this page, and stays a link for whoever opens it elsewhere.

export function intercept(act: () => void): (event: MouseEvent) => void {
  return (event) => {
    if (event.metaKey || event.ctrlKey || event.shiftKey || event.button !== 0) return;
    event.preventDefault();
    act();
  };
}
