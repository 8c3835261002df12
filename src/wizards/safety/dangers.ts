// The one table from acts to dangers, and how bad each danger is. A danger's words: src/content/<language>/cautions/<id>.yaml.
import type { Act } from './acts.ts';

/** Life: mains, a damaged supply. Injury: burns, fire, cuts. Damage: a unit, a decoder, a wheel, a finger that gets a fright. */
export const RANKS = ['life', 'injury', 'damage'] as const;
export type Rank = (typeof RANKS)[number];

export const RANK_OF = {
  'mains-side': 'life',
  'mains-outdoors': 'life',
  'two-supplies-never-joined': 'life',
  'analogue-transformer': 'life',
  'earth-pin': 'life',
  'coin-rules': 'injury',
  'resistor-hot': 'injury',
  'lamp-hot': 'injury',
  'short-heat': 'injury',
  'heat-below-trip': 'injury',
  'never-unattended': 'injury',
  'meter-on-amperes': 'injury',
  'rings-off': 'injury',
  'cutting-rails': 'injury',
  'tight-joiners': 'injury',
  'hot-iron': 'injury',
  'wet-track': 'injury',
  'coil-stays-on': 'injury',
  'small-parts-children': 'injury',
  'label-before-plug': 'damage',
  'still-fed': 'damage',
  'trains-resume': 'damage',
  'no-signal-runaway': 'damage',
  'strip-and-clamp': 'damage',
  'meter-sockets': 'damage',
  'current-the-scale-bears': 'damage',
  'reference-by-instructions': 'damage',
} as const satisfies Readonly<Record<string, Rank>>;
export type DangerId = keyof typeof RANK_OF;

/** What an act brings. An empty list: the act has its place in what a complaint forbids, and hurts nobody by itself. */
export const DANGERS_OF: Readonly<Record<Act, readonly DangerId[]>> = {
  'switches-on': ['trains-resume'],
  'sends-a-train-over-the-gap': [],
  'stands-across-the-gap': ['short-heat'],
  'brings-it-about-again': [],
  'runs-trains-in-the-new-part': [],
  'puts-a-vehicle-on-the-track': [],
  'feeds-the-new-part': [],
  'adds-power': [],
  'handles-a-supply': ['mains-side'],
  'plugs-a-supply': ['mains-side', 'label-before-plug'],
  'chooses-a-supply': ['label-before-plug'],
  'has-two-supplies': ['two-supplies-never-joined'],
  'meets-an-old-controller': ['analogue-transformer'],
  'meets-an-earth-pin': ['earth-pin'],
  'touches-what-is-off': ['still-fed'],
  'touches-what-is-live': ['rings-off'],
  'cuts-or-files-rail': ['cutting-rails'],
  'pulls-joiners': ['tight-joiners'],
  solders: ['hot-iron'],
  'strips-wire': ['strip-and-clamp'],
  'plugs-the-control-cable': ['no-signal-runaway'],
  'bridges-the-rails': ['short-heat'],
  'puts-a-coin-on-the-rails': ['coin-rules'],
  'puts-a-resistor-on-the-rails': ['resistor-hot'],
  'uses-a-lamp-as-load': ['lamp-hot'],
  'measures-volts': ['rings-off', 'meter-sockets'],
  'takes-a-meter': ['meter-sockets'],
  'measures-amperes': ['meter-on-amperes'],
  'meets-a-weak-fault': ['heat-below-trip'],
  'lets-it-run': ['never-unattended'],
  'sets-what-trips': ['current-the-scale-bears'],
  'uses-cleaner-or-glue': ['wet-track'],
  'throws-a-coil': ['coil-stays-on'],
  'takes-small-parts': ['small-parts-children'],
  'fits-a-reference-wire': ['reference-by-instructions'],
};

/** What an act brings besides where the layout may stand in a garden. */
export const DANGERS_OUTDOORS = {
  'handles-a-supply': ['mains-outdoors'],
  'plugs-a-supply': ['mains-outdoors'],
} as const satisfies Partial<Readonly<Record<Act, readonly DangerId[]>>>;

const bringsOutdoors = (act: Act): act is keyof typeof DANGERS_OUTDOORS => Object.hasOwn(DANGERS_OUTDOORS, act);

/** The dangers that some acts bring outdoors only, each once. */
export const dangersOutdoors = (acts: readonly Act[]): string[] => [
  ...new Set(acts.filter(bringsOutdoors).flatMap((act) => DANGERS_OUTDOORS[act])),
];

/** With these the power is on, or comes on. */
const LIVE: readonly Act[] = [
  'switches-on',
  'plugs-a-supply',
  'sends-a-train-over-the-gap',
  'stands-across-the-gap',
  'brings-it-about-again',
  'runs-trains-in-the-new-part',
  'touches-what-is-live',
  'puts-a-coin-on-the-rails',
  'puts-a-resistor-on-the-rails',
  'uses-a-lamp-as-load',
  'measures-volts',
  'measures-amperes',
  'lets-it-run',
];

/** Whether the power is on with any of some acts. */
export const hasPowerOn = (acts: readonly Act[]): boolean => acts.some((act) => LIVE.includes(act));

/** All of them: at the first step with the power on. Where no step of an answer handles a supply, they stand at its first. */
export const ALL_OUTDOORS: readonly string[] = [...new Set(Object.values(DANGERS_OUTDOORS).flat())];

const isDanger = (id: string): id is DangerId => Object.hasOwn(RANK_OF, id);

/** How bad a danger is; one without a rank stops the build. */
export function rankOf(id: string): Rank {
  if (!isDanger(id)) throw new Error(`The caution "${id}" has no rank in src/wizards/safety/dangers.ts`);
  return RANK_OF[id];
}

/** The dangers of some acts and of what else is named by hand, the worst first, each once. */
export function dangersOf(acts: readonly Act[], named: readonly string[] = []): string[] {
  const all = [...new Set<string>([...acts.flatMap((act) => DANGERS_OF[act]), ...named])];
  return RANKS.flatMap((rank) => all.filter((id) => rankOf(id) === rank));
}
