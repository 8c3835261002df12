// The island of "Which supply goes on which unit?".
import { whichSupplyWhere } from '../../../wizards/which-supply-where/index.ts';
import type { WizardProps } from '../frame/index.ts';
import { Frame } from '../frame/index.ts';

const load = async () => (await import('./WhichSupplyAnswer.tsx')).WhichSupplyAnswer;

export default function WhichSupplyWizard(props: WizardProps) {
  return <Frame {...props} wizard="which-supply-where" machine={whichSupplyWhere} load={load} />;
}
