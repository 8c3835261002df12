// A slider over the whole range of its field, with values written in the unit people use for it.
import type { NumberField } from '../../../wizards/planning/index.ts';
import type { Numbers, Say } from '../../words/index.ts';
import { Slider } from './Slider.tsx';

interface Props {
  readonly field: NumberField;
  /** The words of the field's own id where left out. */
  readonly label?: string;
  readonly value: number;
  readonly step: number;
  /** The key of the sentence that names the range. */
  readonly problem: string;
  readonly say: Say;
  readonly numbers: Numbers;
  readonly onValue: (value: number) => void;
}

export function FieldSlider({ field, label, value, step, problem, say, numbers, onValue }: Props) {
  const write = (one: number): string => numbers.quantity(one, field.quantity);
  return (
    <Slider
      field={field}
      label={label ?? say(field.id)}
      value={value}
      text={write(value)}
      least={field.least}
      most={field.most}
      step={step}
      problem={say(problem, { least: write(field.least), most: write(field.most) })}
      bare={numbers.system}
      onValue={onValue}
    />
  );
}
