// What follows each answer is reckoned while the question is read, one answer at a time: a tap then draws what is there already.
import { useEffect } from 'preact/hooks';

/** A question is drawn and read first. */
const WAIT_MS = 240;
/** A tap goes before the next reckoning. */
const BETWEEN_MS = 4;

/** Runs each of `reckonings`, in turn, until they change. */
export function useAhead(reckonings: readonly (() => void)[]): void {
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout>;
    const from = (index: number, wait: number): void => {
      const reckon = reckonings[index];
      if (reckon === undefined) return;
      timer = setTimeout(() => {
        reckon();
        from(index + 1, BETWEEN_MS);
      }, wait);
    };
    from(0, WAIT_MS);
    return () => clearTimeout(timer);
  }, [reckonings]);
}
