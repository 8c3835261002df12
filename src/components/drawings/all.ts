// The drawings that fixes and lessons may name. Each draws itself twice, for wide and for narrow places.
import Breakers from './Breakers.astro';
import FourParts from './FourParts.astro';
import Labels from './Labels.astro';
import LargerSupply from './LargerSupply.astro';
import OutAndBack from './OutAndBack.astro';
import TwoDistricts from './TwoDistricts.astro';

export const DRAWINGS = {
  'four-parts': FourParts,
  'larger-supply': LargerSupply,
  'two-districts': TwoDistricts,
  breakers: Breakers,
  labels: Labels,
  'out-and-back': OutAndBack,
} as const;

export type DrawingId = keyof typeof DRAWINGS;

export const isDrawing = (id: string): id is DrawingId => Object.hasOwn(DRAWINGS, id);
