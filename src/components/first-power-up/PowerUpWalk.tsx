// The tests of the plan of the sheet that is open, one a screen, and the record at the end. What was seen stays in this tab's history: a
// step back is one test back, and no link says that something is safe.
import { useEffect, useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks';
import { handOver, replayPowerUp, type Seen } from '../../wizards/first-power-up/index.ts';
import type { Plan } from '../../wizards/plan/index.ts';
import { openSheet } from '../kept-sheets/index.ts';
import { planFor } from '../plan/index.ts';
import { useMeasures } from '../shared/index.ts';
import { Numbers, sayer } from '../words/index.ts';
import { Differs } from './Differs.tsx';
import { Coming, Led } from './Led.tsx';
import type { PowerUpProps } from './props.ts';
import { Record } from './Record.tsx';
import type { Told } from './said.ts';
import { seenIn } from './seen-in.ts';
import { Test } from './Test.tsx';

export function PowerUpWalk(props: PowerUpProps) {
  const { words, language, home } = props;
  const say = useMemo(() => sayer(words, language), [words, language]);
  const system = useMeasures();
  const numbers = useMemo(() => new Numbers(language, system, words), [language, system, words]);
  const [opened, setOpened] = useState<Awaited<ReturnType<typeof openSheet>> | undefined>(undefined);
  const [plan, setPlan] = useState<Plan | undefined>(undefined);
  const [failed, setFailed] = useState(false);
  const [seen, setSeen] = useState<readonly Seen[]>([]);
  const moved = useRef(false);
  const box = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    const read = (): void => setSeen(seenIn(history.state));
    read();
    addEventListener('popstate', read);
    return () => removeEventListener('popstate', read);
  }, []);
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
  }, [seen]);
  if (failed)
    return <Led say={say} text={say('power-up-failed')} to={location.pathname} name={say('power-up-again')} />;
  if (opened !== undefined && !('sheet' in opened)) {
    const isNone = 'none' in opened;
    const text = say(isNone ? 'power-up-none' : 'power-up-problem');
    return <Led say={say} text={text} to={`${home}layout-sheet/`} name={say('power-up-to-sheet')} />;
  }
  if (plan === undefined) return <Coming say={say} />;
  const mayPower = plan.steps.some(({ id }) => id === 'each-alone');
  const now = replayPowerUp({ rows: plan.tests, mayPower }, seen);
  const go = (next: readonly Seen[]): void => {
    moved.current = true;
    history.pushState({ powerUp: next }, '');
    setSeen(next);
  };
  const told: Told = { ...props, say, numbers, plan };
  const back = now.seen.length > 0 ? () => history.back() : undefined;
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
          led={handOver(plan.tests, now.seen)}
          onAgain={() => go(now.seen.slice(0, -1))}
        />
      )}
      {now.state === 'recorded' && <Record {...told} now={now} onAnew={() => go([])} />}
    </div>
  );
}
