// What can wait until the next question is on the screen.
import { useEffect, useState } from 'preact/hooks';

const WAIT_MS = 160;

/** The value as it was, until the new one's turn has come: a moment after the screen was drawn. */
export function useLater<Value>(value: Value): Value {
  const [shown, setShown] = useState(value);
  useEffect(() => {
    const timer = setTimeout(() => setShown(() => value), WAIT_MS);
    return () => clearTimeout(timer);
  }, [value]);
  return shown;
}
