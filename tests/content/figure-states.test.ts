// "Set the figure so": what the words of a lesson say of the figure is how the link sets it up, so that nobody reads of five trains and sees four.
import { describe, expect, test } from 'vitest';
import { ALONG_START } from '../../src/components/figures/along-the-track/model.ts';
import { GAP_SCOPE_START } from '../../src/components/figures/gap-scope/model.ts';
import { DIVIDED_START, LARGER_START, TRAINS_START } from '../../src/components/figures/how-many-trains/models.ts';
import { THROUGH_SECTION_START } from '../../src/components/figures/through-section/model.ts';
import { TRAIN_ACROSS_START } from '../../src/components/figures/train-across/model.ts';
import { openingOf, WHO_OPENS_START } from '../../src/components/figures/who-opens/model.ts';
import { DRIVE_START, isDrivePreset, presetSettings } from '../../src/engine/drive/layout.ts';
import type { FigureId } from '../../src/layouts/figures.ts';
import { isRecord, type Words, wordsOf } from './folder.ts';

/** How a figure stands, by the names of its settings; what its address says in other units is as the address says it. */
type State = Readonly<Record<string, unknown>>;

const ALONG = { ...ALONG_START, bus: ALONG_START.bus * 1e6 };
const STARTS: Readonly<Record<FigureId, State>> = {
  'how-many-trains': { ...TRAINS_START },
  'larger-supply': { ...LARGER_START },
  'booster-adds': { ...DIVIDED_START },
  'voltage-along': ALONG,
  'short-along': ALONG,
  'gap-scope': { ...GAP_SCOPE_START },
  'track-scope': { ...GAP_SCOPE_START },
  'train-across': { ...TRAIN_ACROSS_START },
  'through-section': { ...THROUGH_SECTION_START },
  'who-opens': { ...WHO_OPENS_START },
  'drive-across': { ...DRIVE_START },
};

const named = (parameter: string): string =>
  parameter.replaceAll(/-([a-z])/g, (_, letter: string) => letter.toUpperCase());

/** A setting as an address writes it, in the kind that the figure has it in. */
function inItsKind(text: string, like: unknown): unknown {
  if (Array.isArray(like)) return text.split(',').map(Number);
  if (typeof like === 'number') return Number(text);
  return typeof like === 'boolean' ? text === 'yes' : text;
}

function withSettings(state: State, address: string): State {
  let set = state;
  for (const [parameter, text] of new URLSearchParams(address)) {
    if (parameter === 'fault') set = { ...presetSettings(isDrivePreset(text) ? text : undefined) };
    else {
      const name = named(parameter);
      if (!Object.hasOwn(set, name)) throw new Error(`No figure has the setting "${parameter}" of "${address}"`);
      set = { ...set, [name]: inItsKind(text, set[name]) };
    }
  }
  return set;
}

/** What words say of a figure: where they stand, this has to hold; `said` are the parts of the words in brackets. */
type Meaning = readonly [words: RegExp, holds: (state: State, said: readonly string[]) => boolean];

const COUNTS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight'];
const count = (word = ''): number => COUNTS.indexOf(word.toLowerCase());
const num = (state: State, name: string): number => Number(state[name]);
const feeds = (state: State): readonly number[] =>
  Array.isArray(state['feeds']) ? state['feeds'].map(Number).sort((one, two) => one - two) : [];
const is =
  (name: string, value: unknown) =>
  (state: State): boolean =>
    state[name] === value;
/** The first number said is this setting. */
const says =
  (name: string) =>
  (state: State, [said]: readonly string[]): boolean =>
    num(state, name) === Number(said);
const all =
  (...these: readonly ((state: State) => boolean)[]) =>
  (state: State): boolean =>
    these.every((one) => one(state));

const CUT = all(is('cutUpper', true), is('cutLower', true));
const TICKED: Readonly<Record<string, string>> = {
  'capacitor across the wires of B': 'capacitor',
  'without a signal the booster holds a plain level': 'holds',
  'holds a plain level': 'holds',
  'a way round without gaps': 'path',
  'track wires of B turned round': 'reversed',
};

const SCOPE: readonly Meaning[] = [
  [/jump between plus and minus (\d+) V/, says('near')],
  [/The rails have (\d+) V/, says('near')],
  [/Raise the volts to (\d+) V/, says('near')],
  [/Look at the line\./, is('view', 'bits')],
  [/Look at the whole packet/, is('view', 'packet')],
  [/another command/, (state) => state['sent'] !== GAP_SCOPE_START.sent],
  [/Locomotive 3 is being told to run/, is('sent', 'speed-3')],
  [/Lower the volts on the rails/, (state) => num(state, 'near') > 12],
  [/fault at none/, is('state', 'right')],
  [/Lower the volts of side B by 2 V/, (state) => state['near'] === state['far']],
  [/hold their last level, as shown here/, is('state', 'held')],
  [/Choose “late” and look at one edge/, all(is('state', 'late'), is('view', 'edge'))],
  [
    /Try (\d+) nanofarads and (\d+) ohms/,
    (state, [nanofarads, ohms]) =>
      state['state'] === 'rounded' &&
      num(state, 'nanofarads') === Number(nanofarads) &&
      num(state, 'ohms') === Number(ohms),
  ],
  [/side B turned round/, is('state', 'reversed')],
];

const ON_THE_TRACK: readonly Meaning[] = [
  [/(?:train stands|short lies|marker stands,) at the far end/, (state) => state['at'] === state['length']],
  [/slow(?:\.|er)? .*far end|end, for there/, (state) => state['at'] === state['length']],
  [/lies close to the unit/, is('at', 0)],
  [/(?:spot|reading)(?: to| at) the first feeder/, (state) => state['at'] === feeds(state)[0]],
  [/(?:with|on) one feeder\b/, (state) => feeds(state).length === 1],
  [
    /for each quarter of the track/,
    (state) => feeds(state).length === 5 && feeds(state).every((at, i) => at === (i * num(state, 'length')) / 4),
  ],
  [/one feeder less/, (state) => feeds(state).length > 1],
  [/Feeder 2 stands in the middle/, (state) => feeds(state)[1] === num(state, 'length') / 2],
  [
    /in the middle now, and one at the end/,
    (state) => feeds(state).length === 3 && feeds(state)[2] === state['length'],
  ],
  [
    /Set a feeder right at the far end/,
    (state) => feeds(state).includes(num(state, 'length')) && state['at'] === state['length'],
  ],
  [/Make the bus thicker|Try the thicker bus/, (state) => num(state, 'bus') < 1],
  [/(\d+) thousandths of an ohm/, (state, [said]) => num(state, 'rail') === Number(said) / 1000],
  [/Make the track longer|On a longer track|The layout has grown/, (state) => num(state, 'length') > ALONG.length],
  [/no feeder was added|beyond the last feeder/, (state) => Math.max(...feeds(state)) < num(state, 'length')],
  [/Add feeders and spread them/, (state) => feeds(state).length > ALONG.feeds.length],
  [/a layout that is new/, (state) => state['rail'] === ALONG.rail],
  [/rails have aged/, (state) => num(state, 'rail') > 2 * ALONG.rail],
  [/(?:draw|stands at) ([\d.]+) A(?:\.|$| Raise)/, says('amps')],
  [/while trains there draw ([\d.]+) A/, says('amps')],
  [/draw little now/, (state) => num(state, 'amps') < 1],
  [/a busy track/, (state) => num(state, 'amps') >= 3],
  [
    /from (\d) A to|the unit trips at (\d) A\. What/,
    (state, [push, told]) => num(state, 'trip') === Number(push ?? told),
  ],
  [/Lower the trip current/, (state) => num(state, 'trip') > 3],
  [/Move the (?:train|short) along/, (state) => num(state, 'at') <= 2],
];

const MEANINGS: Readonly<Record<FigureId, readonly Meaning[]>> = {
  'how-many-trains': [
    [/slider for trains moving, and watch/, (state) => num(state, 'moving') < num(state, 'total')],
    [/Let one train stand/, (state) => state['moving'] === state['total']],
    [/older motors/, is('older', true)],
    [/(\w+) trains are on the track in the figure now/, (state, [total]) => state['total'] === count(total)],
    [/(\w+) of them move/, (state, [moving]) => state['moving'] === count(moving)],
    [/on a (\d) A supply/, says('supply')],
  ],
  'larger-supply': [
    [/which of the two sets the limit/, (state) => state['supply'] !== state['limit']],
    [/(\d) A on the supply’s label/, says('supply')],
    [/(\d) A on the unit’s/, says('limit')],
    [/(?:a supply of|stands at) (\d) A/, says('supply')],
    [/shows the (\d) A supply/, says('supply')],
    [/unit of (\d) A/, says('limit')],
    [/unit passes (\d) A/, says('limit')],
    [/Raise the unit limit/, (state) => num(state, 'supply') > num(state, 'limit')],
  ],
  'booster-adds': [
    [/all trains in part A|All six are in part A|as if you had bought no booster/, is('there', 0)],
    [/(?:All|all) (six|eight)/, (state, [here]) => state['here'] === count(here) && state['there'] === 0],
    [/Move them over/, is('there', 0)],
    [/on (\d) A, and it is not enough/, says('a')],
    [/Give part B a larger supply|Raise the supply of part B/, (state) => num(state, 'b') < 5],
    [/Go on to four and four/, (state) => num(state, 'here') > 4 && num(state, 'here') + num(state, 'there') === 8],
    [/Make the left supply smaller/, (state) => state['a'] === state['b'] && state['here'] === state['there']],
    [
      /(\w+) trains are on the left and (\w+) is on the right/,
      (state, [left, right]) => state['here'] === count(left) && state['there'] === count(right),
    ],
  ],
  'voltage-along': ON_THE_TRACK,
  'short-along': ON_THE_TRACK,
  'gap-scope': SCOPE,
  'track-scope': SCOPE,
  'train-across': [
    [/Side B stands (\d) V higher/, (state, [said]) => num(state, 'voltsB') - num(state, 'voltsA') === Number(said)],
    [/Put B higher/, (state) => num(state, 'voltsB') > num(state, 'voltsA')],
    [/what B draws to (\d) A/, says('loadB')],
    [/way through the train better/, (state) => num(state, 'ohms') < TRAIN_ACROSS_START.ohms],
    [/Turn one side round/, is('reversed', true)],
    [/(?:stand at the|and the) same volts/, (state) => state['voltsA'] === state['voltsB']],
  ],
  'through-section': [
    [/the reverser turns the section over/, is('device', 'automatic')],
    [/nothing turns the section over/, is('device', 'none')],
    [/With a switch/, is('device', 'switch')],
    [/Push the front of the train through/, (state) => num(state, 'front') < 0],
    [
      /train has entered|wholly inside/,
      (state) => num(state, 'front') > 0 && num(state, 'front') < num(state, 'length'),
    ],
    [/section is \{m:([\d.]+)\} long/, says('length')],
    [/\{m:([\d.]+)\} from its first to its last metal wheel/, says('metal')],
  ],
  'who-opens': [
    [/clean short of (\d) A/, says('short')],
    [
      /breaker that is lower and faster/,
      (state) => num(state, 'breaker') < num(state, 'unit') && num(state, 'breakerTime') < num(state, 'unitTime'),
    ],
    [/as slow as the unit/, (state) => state['breakerTime'] === state['unitTime']],
    [
      /so poor that nothing opens/,
      (state) => openingOf({ ...WHO_OPENS_START, short: num(state, 'short') }).opens === 'nothing',
    ],
    [
      /both trip at (\d) A/,
      (state, [said]) => num(state, 'breaker') === Number(said) && num(state, 'unit') === Number(said),
    ],
    [/other parts draw ([\d.]+) A/, says('others')],
  ],
  'drive-across': [
    [
      /(?:booster|B) is (?:switched )?off|booster is off|Switch the booster off|switch the booster off|unit of B is off|Its track is off/,
      is('on', false),
    ],
    [/both rails are cut\.|all is cut as it should be|The gap is good/, CUT],
    [
      /(?:a second|another) way(?: to A)?|a way round,|wire (?:of the old part still|leads round)|leads round the gap/,
      is('path', true),
    ],
    [/[Oo]ne rail (?:only )?is cut/, (state) => state['cutUpper'] !== state['cutLower']],
    [/nobody feeds|piece without power|Take B for the programming track/, is('deadPiece', true)],
    [/[Tt]he cable is pulled/, is('cable', false)],
    [/The cable is in\./, is('cable', true)],
    [/Pull the control cable in the figure/, is('cable', true)],
    [/stored energy|a store of energy/, is('vehicle', 'stored')],
    [/wires do not reach the rails/, is('feed', false)],
    [/lamp of the booster says that it is ready/, all(is('on', true), is('feed', false))],
    [/the wrong way round|wires of B round and drive|mirrored cable does/, is('reversed', true)],
    [/everything in order|what you want to see/, (state) => JSON.stringify(state) === JSON.stringify(DRIVE_START)],
    [/Put the capacitor in/, is('capacitor', true)],
    [/tick away at “(upper|lower) rail cut”/, CUT],
    [
      /[Tt]ick “([^”]+)”/,
      (state, [tick = '']) =>
        tick === 'booster switched on' || (TICKED[tick] !== undefined && state[TICKED[tick]] === false),
    ],
  ],
};

const text = (value: unknown): string => (typeof value === 'string' ? value : '');

interface Said {
  readonly words: string;
  readonly set: string;
}

/** All that a lesson says beside a link that sets its figure; the question belongs to how it is run. */
function saidBy({ data }: Words): Said[] {
  const tries = Array.isArray(data['tries']) ? data['tries'].filter(isRecord) : [];
  const { prediction } = data;
  const run = isRecord(prediction) && isRecord(prediction['run']) ? prediction['run'] : {};
  const question = isRecord(prediction) ? text(prediction['question']) : '';
  return [
    ...tries.map((one) => ({ words: text(one['do']), set: text(one['set']) })),
    { words: `${question} ${text(run['do'])}`, set: text(run['set']) },
  ];
}

const isFigure = (id: string): id is FigureId => Object.hasOwn(MEANINGS, id);

const EACH = wordsOf('en', 'lessons').flatMap((lesson) =>
  saidBy(lesson).map(({ words, set }) => [lesson.id, words, set, lesson.data] as const),
);

describe('The figure stands as the words beside its link say', () => {
  test.each(EACH)('in %s: “%s”', (_, words, set, data) => {
    const figure = text(data['figure']);
    if (!isFigure(figure)) throw new Error(`No figure "${figure}"`);
    const state = withSettings(withSettings(STARTS[figure], text(data['begins'])), set);
    const meant = MEANINGS[figure].flatMap(([pattern, holds]) =>
      [...words.matchAll(new RegExp(pattern, 'g'))].map(([phrase, ...said]) => ({ phrase, holds: holds(state, said) })),
    );
    expect(set, 'has a link').not.toBe('');
    expect(meant.length, 'says something of the figure that is known here').toBeGreaterThan(0);
    expect(meant.filter(({ holds }) => !holds).map(({ phrase }) => phrase)).toEqual([]);
  });

  test('and a figure that stands otherwise would be seen', () => {
    const [pattern, holds] = MEANINGS['larger-supply'].at(3) ?? [/./, () => true];
    const said = pattern.exec('The figure stands at 2 A.')?.slice(1) ?? [];
    expect([holds({ supply: 2 }, said), holds({ supply: 1.5 }, said)]).toEqual([true, false]);
  });
});
