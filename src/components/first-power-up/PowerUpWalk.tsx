// The tests of the plan of the sheet that is open, one a screen, and the record at the end. What was seen stays in this tab's history: a
// step back is one test back, and no link says that something is safe.
import { useEffect, useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks';
import { type HandOver, handOver, type PowerUp, replayPowerUp, type Seen } from '../../wizards/first-power-up/index.ts';
import type { Plan } from '../../wizards/plan/index.ts';
import { clearTests, keepTests } from '../device/index.ts';
import { openSheet } from '../kept-sheets/index.ts';
import { namesIn, planFor } from '../plan/index.ts';
import { useMeasures } from '../shared/index.ts';
import { Numbers, sayer } from '../words/index.ts';
import { Differs } from './Differs.tsx';
import { Coming, Led } from './Led.tsx';
import type { PowerUpProps } from './props.ts';
import { Record } from './Record.tsx';
import { type Told, whereSaid } from './said.ts';
import { markOf, NOTHING_SEEN, type Standing, standingIn } from './seen-in.ts';
import { Test } from './Test.tsx';

export function PowerUpWalk(props: PowerUpProps) {
  const { words, language, home } = props;
  const say = useMemo(() => sayer(words, language), [words, language]);
  const system = useMeasures();
  const numbers = useMemo(() => new Numbers(language, system, words), [language, system, words]);
  const [opened, setOpened] = useState<Awaited<ReturnType<typeof openSheet>> | undefined>(undefined);
  const [plan, setPlan] = useState<Plan | undefined>(undefined);
  const [failed, setFailed] = useState(false);
  const [standing, setStanding] = useState<Standing>(NOTHING_SEEN);
  const moved = useRef(false);
  const box = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    if (plan === undefined) return;
    const read = (): void => setStanding(standingIn(history.state, plan, hereNow()));
    read();
    addEventListener('popstate', read);
    return () => removeEventListener('popstate', read);
  }, [plan]);
  useEffect(() => {
    openSheet().then(setOpened);
  }, []);
  useEffect(() => {
    if (opened === undefined || !('sheet' in opened)) return;
    return planFor(opened.sheet, system, setPlan, () => setFailed(true));
  }, [opened, system]);
  useEffect(() => {
    if (!moved.current) return;
    scrollTo({ top: 0 });
    box.current?.querySelector('h1')?.focus({ preventScroll: true });
  }, [standing]);
  if (failed)
    return <Led say={say} text={say('power-up-failed')} to={location.pathname} name={say('power-up-again')} />;
  if (opened !== undefined && !('sheet' in opened)) {
    const isNone = 'none' in opened;
    const text = say(isNone ? 'power-up-none' : 'power-up-problem');
    return <Led say={say} text={text} to={`${home}layout-sheet/`} name={say('power-up-to-sheet')} />;
  }
  if (plan === undefined) return <Coming say={say} />;
  const mayPower = plan.steps.some(({ id }) => id === 'each-alone');
  const now = replayPowerUp({ rows: plan.tests, mayPower }, standing.seen);
  const turn = (seen: readonly Seen[], keep: 'pushState' | 'replaceState'): void => {
    moved.current = true;
    const next = { seen, steps: keep === 'pushState' ? standing.steps + 1 : standing.steps };
    history[keep]({ powerUp: seen, of: markOf(plan), steps: next.steps }, '');
    setStanding(next);
  };
  const go = (next: readonly Seen[]): void => turn(next, 'pushState');
  const told: Told = { ...props, say, numbers, plan, names: namesIn(plan.sheet, say) };
  // Whoever came back from the walk has no step of this page behind them.
  const undo = (): void => (standing.steps > 0 ? history.back() : turn(now.seen.slice(0, -1), 'replaceState'));
  const back = now.seen.length > 0 ? undo : undefined;
  const led = now.state === 'differs' ? handOver(plan, now.seen) : undefined;
  if (now.state === 'not-yet') {
    return (
      <Led
        say={say}
        text={say('power-up-not-yet')}
        to={`${home}plan/${location.hash}`}
        name={say('power-up-to-plan')}
      />
    );
  }
  return (
    <div ref={box} class="walk power-up">
      {now.row !== undefined && now.state === 'asking' && (
        <Test
          key={now.row.id}
          {...told}
          row={now.row}
          number={now.seen.length + 1}
          onSaw={(option, values) => go([...now.seen, { row: now.row?.id ?? '', option, values }])}
          onBack={back}
        />
      )}
      {now.row !== undefined && now.state === 'differs' && (
        <Differs
          {...told}
          row={now.row}
          seen={now.seen.at(-1)}
          led={led}
          onLeave={() => leave(led, now, told)}
          onAgain={() => {
            clearTests();
            go(now.seen.slice(0, -1));
          }}
        />
      )}
      {now.state === 'recorded' && <Record {...told} now={now} onAnew={() => go([])} />}
    </div>
  );
}

/** The address of this page. */
const hereNow = (): string => location.pathname + location.search + location.hash;

/** What the tab keeps on the way to the walk. */
function leave(led: HandOver | undefined, { row, seen }: PowerUp, told: Told): void {
  if (led === undefined || row === undefined) return;
  const place = whereSaid(row, told);
  keepTests({ complaint: led.complaint, place, back: hereNow(), of: markOf(told.plan), seen });
}
