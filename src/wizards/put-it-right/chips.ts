// What can be told at once: every answer of every check, in the groups in which people think of it.
import { CIRCUMSTANCES, SIGN_MODEL } from './model/index.ts';

export const CHIP_GROUPS = ['what', 'where', 'when', 'since', 'tried', 'seen', 'measured', 'layout'] as const;
export type ChipGroup = (typeof CHIP_GROUPS)[number];

export interface ChipsOfCheck {
  readonly check: string;
  readonly group: ChipGroup;
  readonly options: readonly string[];
}

const OF_SIGN: Readonly<Record<string, ChipGroup>> = {
  trouble: 'what',
  'goes-off': 'what',
  'comes-back': 'what',
  'unit-shows': 'what',
  before: 'what',
  where: 'where',
  vehicles: 'where',
  way: 'where',
  when: 'when',
  since: 'since',
  swap: 'tried',
  fewer: 'tried',
  cooling: 'tried',
  'goes-with-unit': 'tried',
  'goes-with-supply': 'tried',
  'goes-with-cable': 'tried',
};
const LAYOUT: ReadonlySet<string> = new Set(CIRCUMSTANCES.map(({ id }) => id));

function groupOf({ reads, source }: (typeof SIGN_MODEL.checks)[number]): ChipGroup {
  const sign = typeof reads === 'string' ? reads : (reads[0] ?? '');
  if (LAYOUT.has(sign)) return 'layout';
  return OF_SIGN[sign] ?? (source === 'instrument' ? 'measured' : 'seen');
}

/**
 * Everything that can be told, in the order of the checks. What is asked first is left out: it has been asked. What a complaint forbids to do is
 * told all the same: it was done already.
 */
export const CHIPS: readonly ChipsOfCheck[] = SIGN_MODEL.checks
  .filter(({ first }) => first !== true)
  .map((check) => ({ check: check.id, group: groupOf(check), options: check.options }));
