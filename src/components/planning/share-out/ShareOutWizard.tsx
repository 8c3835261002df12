// The island of "Where do I divide the layout?".
import { shareOut } from '../../../wizards/share-out/index.ts';
import type { WizardProps } from '../frame/index.ts';
import { Frame } from '../frame/index.ts';

const load = async () => (await import('./ShareOutAnswer.tsx')).ShareOutAnswer;

export default function ShareOutWizard(props: WizardProps) {
  return <Frame {...props} wizard="share-out" machine={shareOut} load={load} />;
}
