// The island of "Which supply goes on which unit?".
import { WHICH_SUPPLY_QUESTIONS, whichSupplyWhere } from '../../wizards/which-supply-where.ts';
import type { WizardProps } from './Frame.tsx';
import { Frame } from './Frame.tsx';

const load = async () => (await import('./PlaceAnswer.tsx')).PlaceAnswer;

export default function PlaceWizard(props: WizardProps) {
  return (
    <Frame {...props} wizard="which-supply-where" machine={whichSupplyWhere} ids={WHICH_SUPPLY_QUESTIONS} load={load} />
  );
}
