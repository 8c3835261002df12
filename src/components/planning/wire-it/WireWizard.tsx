// The island of "How thick must the wire be?".
import { wireIt } from '../../../wizards/wire-it/index.ts';
import type { WizardProps } from '../frame/index.ts';
import { Frame } from '../frame/index.ts';

const load = async () => (await import('./WireAnswer.tsx')).WireAnswer;

export default function WireWizard(props: WizardProps) {
  return <Frame {...props} wizard="wire-it" machine={wireIt} load={load} />;
}
