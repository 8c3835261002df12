// A number by the name that a text gives it, written with its unit.
import type { Numbers } from '../../components/words/index.ts';

export type Written = Readonly<Record<string, (numbers: Numbers) => string>>;
