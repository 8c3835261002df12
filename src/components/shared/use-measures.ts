// Which units a page speaks in: what its address says, else what was typed, else what the person chose on this device.
import { useEffect, useLayoutEffect, useState } from 'preact/hooks';
import type { MeasureSystem } from '../../engine/index.ts';
import { chosenUnits, onUnits, showUnits } from '../device/index.ts';

/** The system of an island. */
export const useMeasures = (): MeasureSystem => useMeasuresTyped(NOTHING_TYPED).lengths;

interface Typed {
  readonly lengths: MeasureSystem | undefined;
  readonly wires: MeasureSystem | undefined;
}

const NOTHING_TYPED: Typed = { lengths: undefined, wires: undefined };

/** The systems of an island with answers; `typed`: those of the units typed in them. Wires go with lengths where no wire was typed. */
export function useMeasuresTyped(typed: Typed): Readonly<Record<keyof Typed, MeasureSystem>> {
  const [chosen, setChosen] = useState<ReturnType<typeof chosenUnits>>({});
  useLayoutEffect(() => {
    const read = (): void => setChosen(chosenUnits());
    read();
    return onUnits(read);
  }, [typed]);
  const lengths = chosen.address ?? typed.lengths ?? chosen.device ?? 'metric';
  useEffect(() => showUnits(lengths), [lengths]);
  return { lengths, wires: chosen.address ?? typed.wires ?? lengths };
}
