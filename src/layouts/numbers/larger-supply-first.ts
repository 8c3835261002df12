// Numbers of the lesson larger-supply-first: what the figure's unit gives on two supplies.
import { LARGER_START, largerSupply } from '../../components/figures/how-many-trains/index.ts';
import type { Written } from './written.ts';

const on = (supply: number) => largerSupply({ ...LARGER_START, limit: 3, supply });

export const LARGER_SUPPLY_FIRST: Written = {
  'usable-of-3-a-unit': (numbers) => numbers.ampsExactly(on(3).able.usable),
  'next-ampere-beyond': (numbers) => numbers.ampsExactly(on(3).more),
};
