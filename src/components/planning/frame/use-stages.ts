// A long page is drawn in stages, so that no tap waits for all of it: what is read first is drawn first.
import { useEffect, useState } from 'preact/hooks';

/** How many of the stages beyond the first may be drawn by now; each follows the one before once that is on the screen. */
export function useStages(most: number): number {
  const [drawn, setDrawn] = useState(0);
  useEffect(() => {
    if (drawn >= most) return;
    const timer = setTimeout(() => setDrawn(drawn + 1));
    return () => clearTimeout(timer);
  }, [drawn, most]);
  return drawn;
}
