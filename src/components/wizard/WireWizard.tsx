// The island of "How thick must the wire be?".
import { WIRE_IT_QUESTIONS, wireIt } from '../../wizards/wire-it.ts';
import type { WizardProps } from './Frame.tsx';
import { Frame } from './Frame.tsx';

const load = async () => (await import('./WireAnswer.tsx')).WireAnswer;

export default function WireWizard(props: WizardProps) {
  return <Frame {...props} wizard="wire-it" machine={wireIt} ids={WIRE_IT_QUESTIONS} load={load} />;
}
