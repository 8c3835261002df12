/** What work that is done a part at a time comes to, all its parts at once. */
export function atOnce<Made>(parts: Generator<unknown, Made>): Made {
  for (;;) {
    const step = parts.next();
    if (step.done === true) return step.value;
  }
}
