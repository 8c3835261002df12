// The island of "Where do I divide the layout?".
import { useCallback } from 'preact/hooks';
import { shareOut } from '../../../wizards/share-out/index.ts';
import type { WizardProps, WorkedOutProps } from '../frame/index.ts';
import { Frame } from '../frame/index.ts';

interface ShareOutProps extends WizardProps {
  /** The address of the styles of the diagram. */
  readonly diagramStyles: string;
}

export default function ShareOutWizard({ diagramStyles, ...props }: ShareOutProps) {
  const load = useCallback(async () => {
    const { ShareOutAnswer } = await import('./ShareOutAnswer.tsx');
    return (given: WorkedOutProps) => <ShareOutAnswer {...given} diagramStyles={diagramStyles} />;
  }, [diagramStyles]);
  return <Frame {...props} wizard="share-out" machine={shareOut} load={load} />;
}
