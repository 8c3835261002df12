// The island of "may I switch on?": the page is there at once, what walks through the tests comes then.
import { useMemo } from 'preact/hooks';
import { useLoaded } from '../shared/index.ts';
import { sayer } from '../words/index.ts';
import { Coming, Led } from './Led.tsx';
import type { PowerUpProps } from './props.ts';

const load = async () => (await import('./PowerUpWalk.tsx')).PowerUpWalk;

export default function FirstPowerUp(props: PowerUpProps) {
  const { words, language } = props;
  const say = useMemo(() => sayer(words, language), [words, language]);
  const { value: PowerUpWalk, failed } = useLoaded(load);
  if (failed) return <Led say={say} text={say('power-up-failed')} to={location.href} name={say('power-up-again')} />;
  return PowerUpWalk === undefined ? <Coming say={say} /> : <PowerUpWalk {...props} />;
}
