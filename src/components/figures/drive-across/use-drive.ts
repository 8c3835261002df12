// Runs a drive in the page: time passes while something is under way and the figure is in view.
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { DriveFrame, DriveSettings, StageIndex } from '../../../engine/index.ts';
import {
  beginDrive,
  driveTrain,
  fromMilliseconds,
  holdProbes,
  isUnderWay,
  passTime,
  placeTrain,
  resetDrive,
  rewireDrive,
} from '../../../engine/index.ts';

/** Longest time that one picture may cover, seconds. */
const LONGEST = 0.1;
/** Pause between pictures while nothing moves, and between jumps where motion is not wanted, milliseconds. */
const QUIET = 100;
const JUMP = 700;

/** What one can do to a drive. */
export interface DriveDeeds {
  readonly begin: (settings: DriveSettings) => void;
  readonly change: (some: Partial<DriveSettings>) => void;
  readonly place: (front: number) => void;
  readonly drive: (way: -1 | 0 | 1) => void;
  readonly hold: (probes: DriveFrame['probes']) => void;
  readonly reset: (stage: StageIndex) => void;
}

/** The drive, and what one can do to it; `figure` is watched for being in view. */
export function useDrive(
  settings: () => DriveSettings,
  figure: { readonly current: Element | null },
): { readonly frame: DriveFrame; readonly can: DriveDeeds } {
  const [frame, setFrame] = useState(() => beginDrive(settings()));
  const [seen, setSeen] = useState(true);
  const last = useRef(0);
  useEffect(() => {
    if (figure.current === null) return;
    const watcher = new IntersectionObserver((entries) => setSeen(entries.at(-1)?.isIntersecting ?? true));
    watcher.observe(figure.current);
    return () => watcher.disconnect();
  }, [figure]);
  const runs = seen && isUnderWay(frame);
  const moves = frame.table.world.cars.some(({ speed }) => speed !== 0);
  useEffect(() => {
    if (!runs) return;
    last.current = performance.now();
    return every(paceOf(moves), (now) => {
      const seconds = fromMilliseconds(now - last.current);
      last.current = now;
      const most = paceOf(moves) === JUMP ? fromMilliseconds(JUMP) : LONGEST + fromMilliseconds(QUIET);
      setFrame((old) => passTime(old, Math.min(most, seconds)));
    });
  }, [runs, moves]);
  const can = useMemo(() => deeds(setFrame), []);
  return { frame, can };
}

type SetFrame = (change: (old: DriveFrame) => DriveFrame) => void;
const deeds = (setFrame: SetFrame): DriveDeeds => ({
  begin: (fresh) => setFrame((old) => beginDrive(fresh, old.probes)),
  change: (some) => setFrame((old) => rewireDrive(old, { ...old.settings, ...some })),
  place: (front) => setFrame((old) => placeTrain(old, front)),
  drive: (way) => setFrame((old) => driveTrain(old, way)),
  hold: (probes) => setFrame((old) => holdProbes(old, probes)),
  reset: (stage) => setFrame((old) => resetDrive(old, stage)),
});

function paceOf(moves: boolean): 'frames' | number {
  if (matchMedia('(prefers-reduced-motion: reduce)').matches) return JUMP;
  return moves ? 'frames' : QUIET;
}

/** Calls back at each picture or each so many milliseconds, until it is ended. */
function every(pace: 'frames' | number, call: (now: number) => void): () => void {
  if (pace !== 'frames') {
    const timer = setInterval(() => call(performance.now()), pace);
    return () => clearInterval(timer);
  }
  let request = requestAnimationFrame(function next(now) {
    call(now);
    request = requestAnimationFrame(next);
  });
  return () => cancelAnimationFrame(request);
}
