// Which units a page speaks in: what its address says, else what was typed, else what the person chose on this device.
import { useEffect, useLayoutEffect, useState } from 'preact/hooks';
import type { MeasureSystem } from '../../engine/index.ts';
import { chosenUnits, onUnits, showUnits } from '../device/index.ts';

/** The system of an island; `typed`: that of the units typed in its answers. */
export function useMeasures(typed?: MeasureSystem): MeasureSystem {
  const [chosen, setChosen] = useState<ReturnType<typeof chosenUnits>>({});
  useLayoutEffect(() => {
    const read = (): void => setChosen(chosenUnits());
    read();
    return onUnits(read);
  }, [typed]);
  const system = chosen.address ?? typed ?? chosen.device ?? 'metric';
  useEffect(() => showUnits(system), [system]);
  return system;
}
