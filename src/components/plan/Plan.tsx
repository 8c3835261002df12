// The island of the plan: opens the sheet, has it planned beside the page, and draws it.
import { useEffect, useMemo, useState } from 'preact/hooks';
import type { Plan as Planned } from '../../wizards/plan/index.ts';
import type { Ahead } from '../diagram/index.ts';
import type { openSheet } from '../kept-sheets/index.ts';
import { useLoaded, useMeasures } from '../shared/index.ts';
import { sayer } from '../words/index.ts';
import type { PlanProps } from './props.ts';

const load = async () => await import('./load.ts');

export default function Plan(props: PlanProps) {
  const { words, language, home } = props;
  const say = useMemo(() => sayer(words, language), [words, language]);
  const system = useMeasures();
  const loaded = useLoaded(load);
  const parts = loaded.value;
  const [opened, setOpened] = useState<Awaited<ReturnType<typeof openSheet>> | undefined>(undefined);
  const [plan, setPlan] = useState<Planned | undefined>(undefined);
  const [ahead, setAhead] = useState<Ahead | undefined>(undefined);
  const [failed, setFailed] = useState(false);
  useEffect(() => {
    const open = () => parts?.openSheet().then(setOpened);
    open();
    addEventListener('hashchange', open);
    return () => removeEventListener('hashchange', open);
  }, [parts]);
  useEffect(() => {
    if (parts === undefined || opened === undefined || !('sheet' in opened)) return;
    setFailed(false);
    // While it is worked out beside the page, the page lays it out.
    const { section } = parts.namesIn(opened.sheet, say);
    parts.layAhead(opened.sheet, ({ id }) => section(id)).then(setAhead, () => undefined);
    return parts.planFor(opened.sheet, system, setPlan, () => setFailed(true));
  }, [parts, opened, system, say]);
  if (loaded.failed || failed) {
    return (
      <p class="problem" role="alert">
        {say('plan-failed')}{' '}
        <button class="button quiet" type="button" onClick={() => location.reload()}>
          {say('plan-again')}
        </button>
      </p>
    );
  }
  if (opened !== undefined && !('sheet' in opened)) {
    const isNone = 'none' in opened;
    return (
      <p class="part">
        {say(isNone ? 'plan-none' : 'plan-problem')}{' '}
        <a class="button" href={`${home}layout-sheet/`}>
          {say('plan-to-sheet')}
        </a>
      </p>
    );
  }
  if (parts === undefined || plan === undefined) return null;
  return <parts.WholePlan {...props} say={say} system={system} plan={plan} ahead={ahead} hash={location.hash} />;
}
