// Every danger stands at the step where its act is done: words that name an act demand the act, and the act brings its dangers, in
// every form in which a fix is shown.
import { h } from 'preact';
import { renderToString } from 'preact-render-to-string';
import { describe, expect, test } from 'vitest';
import { cautionsTold } from '../../scripts/check/cautions.mjs';
import { outdoors } from '../../src/components/fix/outdoors.ts';
import { Steps } from '../../src/components/fix/Steps.tsx';
import { plainText } from '../../src/components/link/plain-text.ts';
import { shortTest } from '../../src/engine/wiring/short-test.ts';
import { SIGN_MODEL } from '../../src/wizards/put-it-right/model/index.ts';
import type { Act } from '../../src/wizards/safety/acts.ts';
import { ACTS } from '../../src/wizards/safety/acts.ts';
import {
  ALL_OUTDOORS,
  DANGERS_OF,
  dangersOf,
  dangersOutdoors,
  hasPowerOn,
  RANK_OF,
  RANKS,
  rankOf,
} from '../../src/wizards/safety/dangers.ts';
import { JOBS } from '../../src/wizards/safety/jobs.ts';
import type { Step } from './folder.ts';
import { actsIn, cautionsOfCheck, stepsOf, texts, wordsOf } from './folder.ts';

const FIXES = wordsOf('en', 'fixes');
const STEPS = FIXES.flatMap((page) => stepsOf(page).map((step, i) => ({ page: page.id, number: i + 1, ...step })));
const CAUTIONS = Object.fromEntries(
  wordsOf('en', 'cautions').map(({ id, data }) => [
    id,
    {
      rank: rankOf(id),
      harm: String(data['harm']),
      do: String(data['do']),
      line: data['line'] === undefined ? undefined : String(data['line']),
      wide: data['before'] !== undefined,
    },
  ]),
);

/** What a step says, and the acts of which it must name one. */
const NAMED_IN_WORDS: readonly (readonly [RegExp, readonly Act[]])[] = [
  [/\b(?:press|put) (?:the|a) coin\b|^then the coin\b|\bcoin on (?:the|both) rails\b/i, ['puts-a-coin-on-the-rails']],
  [/\b(?:test|power) resistor\b.*\b(?:across|clip)|\bclip the resistor\b/i, ['puts-a-resistor-on-the-rails']],
  [/\bsolder (?:or clamp|a|it)\b|\bsoldered to each rail\b/i, ['solders']],
  [/^cut (?:the gap|both|that)\b|\bfile the last\b/i, ['cuts-or-files-rail']],
  [
    /\bpull the metal joiners? off\b|\bslide the joiner off\b|\blift a joint\b/i,
    ['pulls-joiners', 'cuts-or-files-rail'],
  ],
  [/\b(?:clip|hang|put|hold) (?:one|each|the|two equal) lamps?\b/i, ['uses-a-lamp-as-load']],
  [/\b(?:connect|plug) the control cable\b/i, ['plugs-the-control-cable']],
  [/\bpower on\b|(?<!not |you |to )\bswitch on\b|\bpower (?:one|each) unit\b/i, ['switches-on']],
  [/^everything off[.,] (?!label)|\beverything off and unplugged\b|^power off and unplug\b/i, ['touches-what-is-off']],
  [/\bplug the (?:new|right) (?:one|supply) in/i, ['plugs-a-supply']],
  [/\b(?:stand|set) (?:one|the) locomotive across\b/i, ['stands-across-the-gap']],
  [/\bread the volts from rail to rail\b(?!.*\bclip)/i, ['measures-volts', 'takes-a-meter']],
  [/\bohms from\b|\bread ohms\b|\bmeasure ohms\b/i, ['takes-a-meter', 'measures-volts']],
  [/\b10 A socket, dial\b/i, ['measures-amperes']],
  [/\b(?:ferrule|fresh end|new clamp)\b/i, ['strips-wire']],
  [
    /\bold (?:analogue )?(?:controller|transformer)s?\b.*\b(?:both|off)\b/i,
    ['meets-an-old-controller', 'handles-a-supply'],
  ],
  [/\bpaint nail varnish\b|\bcleaning spirit\b|^glue\b/i, ['uses-cleaner-or-glue']],
];

const missing = ({ text, acts, job }: Pick<Step, 'text' | 'acts' | 'job'>): string[] =>
  NAMED_IN_WORDS.filter(
    ([says, wanted]) => job === undefined && says.test(text) && !wanted.some((act) => acts.includes(act)),
  ).map(([says, wanted]) => `${says} wants ${wanted.join(' or ')}: ${text}`);

describe('The table of acts and dangers', () => {
  test('gives every danger a rank, and words to every danger', () => {
    expect(Object.keys(RANK_OF).sort()).toEqual(Object.keys(CAUTIONS).sort());
  });

  test('leaves no danger that no act brings', () => {
    const brought = new Set<string>([...ACTS.flatMap((act) => DANGERS_OF[act]), ...ALL_OUTDOORS]);
    expect(Object.keys(RANK_OF).filter((id) => !brought.has(id))).toEqual([]);
  });

  test('has no act of the hand that nobody does', () => {
    const done = new Set<string>([
      ...STEPS.flatMap(({ acts }) => acts),
      ...SIGN_MODEL.checks.flatMap(({ acts = [] }) => acts),
      ...wordsOf('en', 'checks').flatMap(({ data }) => actsIn(data['acts'])),
    ]);
    expect(ACTS.filter((act) => !done.has(act))).toEqual([]);
  });

  test('has life before injury, and injury before damage', () => {
    expect(dangersOf(['switches-on', 'puts-a-coin-on-the-rails', 'handles-a-supply'])).toEqual([
      'mains-side',
      'coin-rules',
      'trains-resume',
    ]);
  });

  test('shortens to one line only what breaks something: danger to life and injury are always told in full', () => {
    for (const [id, { rank, line }] of Object.entries(CAUTIONS)) expect(line !== undefined, id).toBe(rank === 'damage');
  });
});

describe('At each step', () => {
  test('the words that name an act were really found', () => {
    const met = NAMED_IN_WORDS.filter(([says]) => STEPS.some(({ text }) => says.test(text)));
    expect(met.length).toBe(NAMED_IN_WORDS.length);
  });

  test.each(STEPS.map((step) => [step.page, step.number, step] as const))(
    '%s, step %i: what the hand does is named as an act',
    (_, __, step) => expect(missing(step)).toEqual([]),
  );

  test('a step that puts a coin on the rails without naming it would be found', () => {
    expect(missing({ text: 'Press the coin on both rails.', acts: ['switches-on'], job: undefined })).toHaveLength(1);
  });

  test('a coin and a load-test resistor near it are met in the one job that has the pass mark, and nowhere else', () => {
    const coins = STEPS.filter(({ acts }) => acts.includes('puts-a-coin-on-the-rails'));
    expect([...new Set(coins.map(({ page }) => page))]).toEqual(['load-test-and-coin']);
    const [first] = coins;
    const passed = STEPS.find(
      ({ page, text }) => page === 'load-test-and-coin' && /only if both spots pass/i.test(text),
    );
    expect(passed?.number).toBeLessThan(first?.number ?? 0);
  });

  test.each(FIXES.map((page) => [page.id, String(page.data['verify']), stepsOf(page)] as const))(
    '%s asks for no proof at the end whose dangers were told at no step',
    (id, verify, steps) => {
      const told = (job: string, act: Act) =>
        id === job || steps.some((step) => step.job === job || step.acts.includes(act));
      if (/\bcoin\b/i.test(verify)) expect(told('load-test-and-coin', 'puts-a-coin-on-the-rails')).toBe(true);
      if (/\btwo (?:equal )?lamps\b|\bboth lamps\b|\bjumper test\b|\beither clip\b/i.test(verify))
        expect(told('prove-the-gap', 'uses-a-lamp-as-load')).toBe(true);
    },
  );

  test('every job has a page, with steps of its own, and some step sends there', () => {
    for (const job of JOBS) {
      expect(
        FIXES.some(({ id }) => id === job),
        job,
      ).toBe(true);
      expect(
        STEPS.some((step) => step.job === job),
        job,
      ).toBe(true);
    }
  });
});

describe('The seconds of the load test', () => {
  // "No longer than 20 seconds up to 15 V, 10 up to 20 V, 5 up to 22 V", wherever it is told.
  const SAID = /(\d+) (?:seconds )?up to (\d+) V/g;
  const telling = (['fixes', 'checks', 'lessons'] as const).flatMap((kind) =>
    wordsOf('en', kind)
      .map(({ id, data, body }) => ({ id, said: [...`${JSON.stringify(data)}${body}`.matchAll(SAID)] }))
      .filter(({ said }) => said.length > 0),
  );

  test('are told at the job, in two fixes and in the checks; a lesson has them from the engine', () => {
    expect(telling.map(({ id }) => id)).toEqual(
      expect.arrayContaining(['load-test-and-coin', 'bad-joiner', 'thin-wire', 'load-test']),
    );
  });

  test.each(telling.map(({ id, said }) => [id, said] as const))(
    'in %s are told for 15, 20 and 22 V, the most there may be',
    (_, said) => expect([...new Set(said.map(([, , volts]) => volts))]).toEqual(['15', '20', '22']),
  );

  test.each(telling.map(({ id, said }) => [id, said] as const))(
    'in %s are no more than the engine allows',
    (_, said) => {
      for (const [, seconds, volts] of said) {
        const allowed = shortTest({ volts: Number(volts), trip: 5 });
        expect(allowed.kind === 'test' ? allowed.seconds : 0).toBeGreaterThanOrEqual(Number(seconds));
      }
    },
  );
});

test('a step that begins with running trains and switches on says so: its caution has the throttles at stop', () => {
  const running = FIXES.flatMap(({ id, ...page }) =>
    stepsOf({ id, ...page })
      .filter(({ acts, text }) => acts.includes('switches-on') && /\b(?:run|drive|evening)\b/i.test(text))
      .map(({ text }) => `${id}: ${text}`),
  );
  expect(running.length).toBeGreaterThan(2);
  expect(running.filter((said) => /: (?:Run|Drive)\b/.test(said))).toEqual([]);
});

describe('In a garden', () => {
  const answered = (page: (typeof FIXES)[number]) => {
    const steps = stepsOf(page).map(({ text, cautions, acts, job }) => {
      const inJob = FIXES.filter(({ id }) => id === job).flatMap((one) => stepsOf(one).flatMap((step) => step.acts));
      const all = [...acts, ...inJob];
      return { do: text, cautions, outdoors: dangersOutdoors(all), live: hasPowerOn(all) };
    });
    const brings = steps.map(({ outdoors: brings_, ...step }) =>
      brings_.length > 0 ? { ...step, outdoors: brings_ } : step,
    );
    const words = { title: '', lead: '', short: '', because: '', needs: '', effort: '', verify: '', next: '' };
    return outdoors({ ...words, before: [], steps: brings }, ALL_OUTDOORS).steps;
  };

  test('mains voltage in wet ground is told at every step that plugs or handles a supply, and once where none does', () => {
    for (const page of FIXES) {
      const told = answered(page).map(({ cautions }) => cautions.includes('mains-outdoors'));
      const wanted = stepsOf(page).map(
        ({ acts }) => acts.includes('plugs-a-supply') || acts.includes('handles-a-supply'),
      );
      for (const [at, wants] of wanted.entries()) if (wants) expect(told[at], `${page.id} at ${at + 1}`).toBe(true);
      expect(told.includes(true), page.id).toBe(stepsOf(page).length > 0);
    }
  });

  test('it stands no later than the first step that has the power on, by itself or in its job', () => {
    const later = FIXES.flatMap((page) => {
      const live = stepsOf(page).findIndex(({ acts, job }) => {
        const inJob = FIXES.filter(({ id }) => id === job).flatMap((one) => stepsOf(one).flatMap((step) => step.acts));
        return [...acts, ...inJob].some((act) => act === 'switches-on' || act === 'plugs-a-supply');
      });
      const told = answered(page).findIndex(({ cautions }) => cautions.includes('mains-outdoors'));
      return live >= 0 && told > live ? [`${page.id}: at ${told + 1}, power at ${live + 1}`] : [];
    });
    expect(later).toEqual([]);
  });

  test('an evening of running trains is one: your power is enough', () => {
    const enough = FIXES.find(({ id }) => id === 'power-is-enough');
    expect(enough === undefined ? [] : answered(enough)[0]?.cautions).toContain('mains-outdoors');
  });

  test('a job that exchanges the supply brings it to the step that sends there', () => {
    const larger = FIXES.find(({ id }) => id === 'larger-supply');
    const steps = larger === undefined ? [] : stepsOf(larger);
    const told = larger === undefined ? [] : answered(larger);
    expect(told[steps.findIndex(({ job }) => job === 'exchange-a-supply')]?.cautions[0]).toBe('mains-outdoors');
  });

  test('it names the outlet, the dry place and whose rules decide', () => {
    const { harm = '', do: act = '' } = CAUTIONS['mains-outdoors'] ?? {};
    expect(`${harm} ${act}`).toMatch(/indoors and dry.*residual-current.*electrical code.*licensed electrician/);
  });
});

describe('What a walk asks to be done', () => {
  const CHECKS = new Map(wordsOf('en', 'checks').map((check) => [check.id, check]));

  test.each([...CHECKS.values()].map((check) => [check.id, check] as const))(
    '%s: what the hand does is named as an act',
    (_, check) => {
      const row = SIGN_MODEL.checks.find(({ id }) => id === check.id);
      const acts = [...actsIn(check.data['acts']), ...actsIn(row?.acts)];
      expect(texts(check.data['how']).flatMap((text) => missing({ text, acts, job: undefined }))).toEqual([]);
    },
  );

  test.each([
    ['coin-near', 'coin-rules'],
    ['coin-far', 'coin-rules'],
    ['load-test', 'resistor-hot'],
    ['two-lamps', 'lamp-hot'],
    ['stand-across', 'short-heat'],
    ['meter-supply-current', 'meter-on-amperes'],
    ['computer-and-earth', 'earth-pin'],
    ['danger-now', 'mains-side'],
  ])('%s carries %s', (id, caution) => {
    const check = CHECKS.get(id);
    expect(check === undefined ? [] : cautionsOfCheck(check)).toContain(caution);
  });
});

describe('Drawn', () => {
  const say = (key: string) => `<${key}>`;
  const drawn = (page: (typeof FIXES)[number]): string[] => {
    const steps = stepsOf(page).map(({ text, cautions }) => ({ do: text, cautions }));
    const html = renderToString(h(Steps, { fix: { steps }, cautions: CAUTIONS, say, language: 'en' }));
    return html.split('<li').slice(1);
  };
  const escaped = (text: string) => renderToString(h('p', null, text)).slice(3, -4);

  test.each(FIXES.map((page) => [page.id, page] as const))(
    '%s tells danger to life and injury in full at each step, and damage at least in a line',
    (_, page) => {
      const told = drawn(page);
      expect(told).toHaveLength(stepsOf(page).length);
      for (const [i, { cautions }] of stepsOf(page).entries())
        for (const id of cautions) {
          const words = CAUTIONS[id];
          const whole = told[i]?.includes(escaped(words?.harm ?? '?')) && told[i]?.includes(escaped(words?.do ?? '?'));
          const line = words?.rank === 'damage' && told[i]?.includes(escaped(words.line ?? '?'));
          expect(whole === true || line === true, `${id} at step ${i + 1}`).toBe(true);
        }
    },
  );

  test.each(FIXES.map((page) => [page.id, page] as const))(
    '%s copied as text tells danger to life and injury in full at each step, and damage at least in a line',
    (_, page) => {
      const steps = stepsOf(page).map(({ text, cautions }) => ({ do: text, cautions }));
      const fix = { title: 'T', effort: 'E', before: [], steps, verify: 'V', next: 'N' };
      const text = plainText({
        headline: 'H',
        lead: 'L',
        fix,
        cautions: CAUTIONS,
        facts: [],
        say,
        here: 'https://a.example/',
      });
      const told = text.split(/^\d+\. /m).slice(1);
      expect(told).toHaveLength(steps.length);
      for (const [i, { cautions }] of steps.entries())
        for (const id of cautions) {
          const words = CAUTIONS[id];
          const whole = told[i]?.includes(`${words?.harm} ${words?.do}`) === true;
          expect(whole || (words?.rank === 'damage' && told[i]?.includes(words.line ?? '?')), `${id} at ${i + 1}`).toBe(
            true,
          );
        }
    },
  );

  test('what is told in one line is told before the step that it guards, on the page and in the copied text', () => {
    const guarded = FIXES.find(({ id }) => id === 'wheelset-short');
    const steps = guarded === undefined ? [] : stepsOf(guarded).map(({ text, cautions }) => ({ do: text, cautions }));
    const last = steps.at(-1);
    const line = CAUTIONS['trains-resume']?.line ?? '?';
    const html = renderToString(h(Steps, { fix: { steps }, cautions: CAUTIONS, say, language: 'en' }))
      .split('<li')
      .at(-1);
    expect(html).toContain(line);
    expect(html?.indexOf(line)).toBeLessThan(html?.indexOf(escaped(last?.do.slice(0, 12) ?? '?')) ?? 0);
    const fix = { title: 'T', effort: 'E', before: [], steps, verify: 'V', next: 'N' };
    const here = 'https://a.example/';
    expect(plainText({ headline: 'H', lead: 'L', fix, cautions: CAUTIONS, facts: [], say, here })).toContain(
      `${steps.length}. (${line}) ${last?.do}`,
    );
  });

  test('a step that sends to a job names it in the text, with its address', () => {
    const job = { title: 'Gap both rails', href: '/en/fixes/gap-both-rails/' };
    const fix = {
      title: 'T',
      effort: 'E',
      before: [],
      steps: [{ do: 'Gap.', cautions: [], job }],
      verify: 'V',
      next: 'N',
    };
    const here = 'https://a.example/en/work-it-out/';
    expect(plainText({ headline: 'H', lead: 'L', fix, cautions: {}, facts: [], say, here })).toContain(
      'Gap both rails: https://a.example/en/fixes/gap-both-rails/',
    );
  });

  test('each rank has a word, a sign and a class of its own', () => {
    const draws = RANKS.map((rank) => {
      const [id] = Object.entries(CAUTIONS).find(([, words]) => words.rank === rank) ?? [''];
      return renderToString(
        h(Steps, { fix: { steps: [{ do: 'Do.', cautions: [id] }] }, cautions: CAUTIONS, say, language: 'en' }),
      );
    });
    for (const part of [/class="caution (\w+)/, /rank-(\w+)/, / d="([^"]+)"/])
      expect(new Set(draws.map((html) => part.exec(html)?.[1])).size, String(part)).toBe(3);
  });
});

test('caution does not drown the steps: no page tells more than five in full, and steps have well over twice the words', () => {
  const { ratio, pages } = cautionsTold();
  expect(pages[0]?.full).toBeLessThanOrEqual(5);
  expect(ratio).toBeLessThan(0.41);
});

describe('A fix that asks for a tool not every house has', () => {
  const TOOLED: readonly Act[] = [
    ...(['solders', 'cuts-or-files-rail', 'pulls-joiners', 'uses-a-lamp-as-load', 'takes-a-meter'] as const),
    ...(['measures-volts', 'measures-amperes', 'puts-a-resistor-on-the-rails', 'puts-a-coin-on-the-rails'] as const),
  ];
  const tooled = FIXES.filter((page) => stepsOf(page).some(({ acts }) => acts.some((act) => TOOLED.includes(act))));

  test('is met often', () => expect(tooled.length).toBeGreaterThan(50));

  test.each(tooled.map(({ id, data }) => [id, data] as const))('%s: says how to do without, or why not', (_, data) =>
    expect(String(data['without'] ?? '')).not.toBe(''),
  );

  test.each(FIXES.map(({ id, data }) => [id, data] as const))('%s: says what to do where it did not help', (_, data) =>
    expect(String(data['next'] ?? '').length).toBeGreaterThan(30),
  );
});

describe('The page for what is hot or smells', () => {
  const steps = STEPS.filter(({ page }) => page === 'switch-off-now');

  test('begins with the plugs, with the danger to life beside them', () => {
    expect(steps[0]?.text).toMatch(/^Pull the plugs of all supplies out of the wall now\./);
    expect(steps[0]?.cautions).toEqual(['mains-side']);
  });

  test('switches nothing on: that is a job of its own, behind a cause that was found and mended', () => {
    expect(steps.flatMap(({ acts }) => acts)).not.toContain('switches-on');
    expect(steps.at(-1)?.text).toMatch(/until the cause is found with everything cold, and mended/);
    expect(steps.at(-1)?.job).toBe('on-again-after-heat');
  });
});

test('a caution that has no rank stops the build by its name', () => {
  expect(() => rankOf('cold-fingers')).toThrow('cold-fingers');
});
