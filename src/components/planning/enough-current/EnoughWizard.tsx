// The island of "Is my power enough?".
import { enoughCurrent } from '../../../wizards/enough-current/index.ts';
import type { WizardProps } from '../frame/index.ts';
import { Frame } from '../frame/index.ts';

const load = async () => (await import('./EnoughAnswer.tsx')).EnoughAnswer;

export default function EnoughWizard(props: WizardProps) {
  return <Frame {...props} wizard="enough-current" machine={enoughCurrent} load={load} />;
}
