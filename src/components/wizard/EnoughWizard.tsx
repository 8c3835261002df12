// The island of "Is my power enough?".
import { ENOUGH_CURRENT_QUESTIONS, enoughCurrent } from '../../wizards/enough-current.ts';
import type { WizardProps } from './Frame.tsx';
import { Frame } from './Frame.tsx';

const load = async () => (await import('./EnoughAnswer.tsx')).EnoughAnswer;

export default function EnoughWizard(props: WizardProps) {
  return (
    <Frame {...props} wizard="enough-current" machine={enoughCurrent} ids={ENOUGH_CURRENT_QUESTIONS} load={load} />
  );
}
