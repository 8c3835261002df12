// A step of the walk: reckoned in turns, its words begun at once, and drawn as a whole. Meanwhile what was tapped stays where it is.
import { useCallback, useEffect, useRef } from 'preact/hooks';
import type { ComplaintId, Sitting, Told } from '../../wizards/put-it-right/index.ts';
import { walkAddress } from '../../wizards/put-it-right/index.ts';
import type { Address } from '../shared/index.ts';
import type { PartProps } from './part-props.ts';
import { soon } from './ready.ts';

interface Going extends Pick<PartProps, 'home' | 'pictureStyles'> {
  readonly complaint: ComplaintId;
  readonly address: Address;
  readonly sitting: Sitting;
  readonly setSitting: (sitting: Sitting) => void;
}

/** How to go on to what was told next, and whether a step is on its way. Of two steps the later one counts. */
export function useGoing({ complaint, address, sitting, setSitting, home, pictureStyles }: Going) {
  const steps = useRef(0);
  const isOn = useRef(false);
  const stop = useCallback((): void => {
    steps.current += 1;
    isOn.current = false;
  }, []);
  // Whoever goes back meanwhile stays there.
  useEffect(() => stop, [address.search]);
  const go = useCallback(
    async (next: Told, said: Sitting = sitting): Promise<void> => {
      stop();
      const mine = steps.current;
      isOn.current = true;
      const search = walkAddress(next);
      const isWanted = (): boolean => steps.current === mine;
      // What fails here is tried again, and said, where it is drawn.
      await soon({ complaint, search, sitting: said, home, pictureStyles }, isWanted).catch(() => undefined);
      if (!isWanted()) return;
      isOn.current = false;
      setSitting(said);
      address.go(search);
    },
    [complaint, address.go, sitting, setSitting, home, pictureStyles],
  );
  return { go, isOn };
}
