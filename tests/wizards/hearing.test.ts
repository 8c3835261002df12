// A chip stands for what was said, not for a word that happens to stand in what people say for it.
import { describe, expect, test } from 'vitest';
import { REPORTED_CASES } from '../judge/cases/cases.ts';
import { LANGUAGES, LISTENER, PHRASES, SAID } from './heard.ts';

const heardIn = (text: string): string[] => LISTENER.hear(text).map(({ check, option }) => `${check}/${option}`);

describe('A word that many say for many things', () => {
  test.each([
    ['now at every start the system clicks off', 'how-driven/at-the-unit'],
    ['where do you even start?', 'how-driven/at-the-unit'],
    ['same model bought twice, same decoder', 'which-vehicles/one-kind'],
    ['the sound locomotives stop', 'which-vehicles/one-kind'],
    ['changing the wheels changed nothing', 'last-change/nothing'],
    ['one of the turnouts is older', 'when-it-happens/at-another-place'],
  ])('“%s” is not heard as %s', (text, answer) => {
    expect(heardIn(text)).not.toContain(answer);
  });

  test.each([
    ['trains keep running all the while', 'which-vehicles/every-one'],
    ['ma loco s’arrête tout le temps', 'what-happens/switches-off'],
    ['the trains fill up all tracks', 'which-vehicles/every-one'],
    ['the rest of the time everything runs smooth', 'which-vehicles/every-one'],
    ['a new loco without decoder', 'last-change/vehicle-opened'],
    ['eine neue Lok ohne Decoder', 'last-change/vehicle-opened'],
  ])('“%s” is not heard as %s', (text, answer) => {
    expect(heardIn(text)).not.toContain(answer);
  });

  test.each([
    ['all of the trains stop', 'which-vehicles/every-one'],
    ['all my trains do it', 'which-vehicles/every-one'],
    ['just hardwired a new decoder into it', 'last-change/vehicle-opened'],
  ])('“%s” is heard as %s', (text, answer) => {
    expect(heardIn(text)).toContain(answer);
  });

  test('“only” is part of what is said', () => {
    expect(heardIn('only the sound locomotives do it')).toContain('which-vehicles/one-kind');
    expect(heardIn('the sound locomotives run fine')).not.toContain('which-vehicles/one-kind');
  });
});

describe('What is well', () => {
  test.each([
    ['Summer = perfect. Winter = dead siding. Every year.', 'weather/warm'],
    ['in summer it is fine', 'weather/warm'],
    ['Im Sommer läuft alles bestens', 'weather/warm'],
  ])('“%s” is not heard as %s', (text, answer) => {
    expect(heardIn(text)).not.toContain(answer);
  });

  test('says nothing of what comes after “until”', () => {
    expect(heardIn('all is fine until in summer the rails buckled in the heat')).toContain('weather/warm');
  });

  test('is heard where being well is the answer', () => {
    expect(heardIn('all the others are fine')).toContain('which-vehicles/one-vehicle');
    expect(heardIn('only in winter')).toContain('weather/cold');
    expect(heardIn('Winter = dead siding')).toContain('weather/cold');
  });
});

describe('Words that belong together', () => {
  test('stand near each other in the text', () => {
    expect(heardIn('one day the other locomotive met a joiner')).not.toContain('which-places/one-spot');
    expect(heardIn('always at one joiner')).toContain('which-places/one-spot');
  });
});

describe('A foreign word', () => {
  test.each([
    ['a number of something else', 'Der Booster schaltet bei zwei solchen Zügen ab', 'how-many-parts/several'],
    ['a bare adverb', 'Réglages d’usine partout. Faut-il un module plus rapide ?', 'which-places/anywhere'],
    ['part of a saying', 'mais quand même pas les trois en même temps', 'when-it-happens/now-and-then'],
    [
      'how something is, and not how it became',
      'Die Lok ist langsam unterwegs und es ruckelt',
      'what-happens/slow-or-dim',
    ],
    [
      'a word of another language',
      'The train went on, and then the loco was dead in the partout siding',
      'which-places/anywhere',
    ],
    ['a unit that trips', 'The breaker trips with nothing wrong on the track', 'what-goes-dark/nothing-goes-off'],
    ['a push after a stop', 'It stops dead on the frog, one nudge and off she goes', 'when-it-happens/at-walking-pace'],
  ])('%s: “%s” is not heard as %s', (_, text, answer) => {
    expect(heardIn(text)).not.toContain(answer);
  });

  test.each([
    ['Kurzschluss überall', 'which-places/anywhere'],
    ['überall', 'which-places/anywhere'],
    ['court-circuit partout sur le réseau', 'which-places/anywhere'],
    ['de temps en temps la loco cale', 'when-it-happens/now-and-then'],
    ['zwei Booster und ein Trafo', 'how-many-parts/several'],
    ['ich habe zwei alte Booster', 'how-many-parts/several'],
  ])('“%s” is heard as %s', (text, answer) => {
    expect(heardIn(text)).toContain(answer);
  });

  test('is heard where the text is of both languages', () => {
    const text =
      'Das steht im Forum auf der Seite und ist nicht von mir. It is my layout and the booster trips at the gap.';
    expect(heardIn(text)).toContain('what-happens/switches-off');
  });
});

describe('Plain words', () => {
  test.each([
    ['now the unit shuts down', 'what-happens/switches-off'],
    ['it only does it when the computer is plugged in', 'computer-and-earth/cured'],
    ['a screwdriver across the rails does not trip anything', 'what-goes-dark/nothing-goes-off'],
    ['it stops on one turnout', 'which-places/at-a-turnout'],
    ['on the crossover the little switcher stops', 'which-vehicles/short-ones'],
    ['it took off when I powered on', 'when-it-happens/from-switch-on'],
    ['the frog is metal but not wired', 'look-at-the-frog/no-wire'],
    ['that breaker is set lower than the other breakers', 'unit-settings/trip-low'],
    ['on the other side it runs all day', 'one-or-all/at-one-place'],
    ['my other engine drives off too', 'what-happens/runs-by-itself'],
    ['it takes a minute to stop', 'what-happens/acts-otherwise'],
    ['the light key does something else now', 'what-happens/acts-otherwise'],
    ['it stalls on the double slip', 'which-places/at-a-turnout'],
    ['Habe eine Kehrschleife mit Kehrschleifenmodul', 'what-is-between/reverser'],
    ['it quits after a while', 'when-it-happens/after-minutes'],
    ['a nudge gets it going', 'when-it-happens/at-walking-pace'],
    ['il faut pousser la loco, elle cale', 'what-happens/stops-dark'],
    ['de loc blijft stilstaan op de kruiswissel', 'what-happens/stops-dark'],
  ])('“%s” is heard as %s', (text, answer) => {
    expect(heardIn(text)).toContain(answer);
  });

  test('of what changed nothing say nothing of the trouble', () => {
    expect(heardIn('throwing turnouts changed nothing')).not.toContain('when-it-happens/when-thrown');
  });
});

describe('A number that is more than two', () => {
  test.each([
    ['with four trains at once everything goes off', 'which-vehicles/only-many'],
    ['sobald sechs Züge fahren, geht alles aus', 'when-it-happens/with-traffic'],
    ['cinq trains à la fois', 'which-vehicles/only-many'],
    ['vier treinen tegelijk', 'which-vehicles/only-many'],
    ['I fitted 5 new turnouts', 'last-change/track-or-wires'],
  ])('is heard as several: “%s” is %s', (text, answer) => {
    expect(heardIn(text)).toContain(answer);
  });

  test('of two trains it is not said, nor of amperes, nor where somebody asks how many', () => {
    for (const text of ['a 5 A booster', 'how many boosters do I need'])
      expect(heardIn(text)).not.toContain('how-many-parts/several');
    expect(heardIn('two trains at once are fine')).not.toContain('which-vehicles/only-many');
  });
});

describe('What a word belongs to', () => {
  test.each([
    ['I put it on the programming track', 'when-it-happens/when-set-on'],
    ['then I drive the engine off the bridge', 'what-happens/runs-by-itself'],
    ['three of the stalls', 'what-happens/stops-dark'],
    ['the display is completely dead', 'lights-then/out'],
    ['the panel on the far side', 'which-places/with-distance'],
  ])('“%s” is not heard as %s', (text, answer) => {
    expect(heardIn(text)).not.toContain(answer);
  });

  test.each([
    ['I put it on the track and it shorts', 'when-it-happens/when-set-on'],
    ['my turntable works but for some stalls', 'which-places/on-the-turntable'],
    ['turned 180 degrees it is fine', 'bridge-half-round/half-round'],
    ['it is slow 15 metres away from the booster', 'which-places/with-distance'],
    ['kortsluiting, ook zonder loc op het spoor', 'which-vehicles/none-needed'],
    ['der Booster fällt aus, nach einer Weile geht es wieder', 'how-it-comes-back/minutes'],
    ['il y a un court-circuit et la loco s’arrête au bout de quelques minutes', 'when-it-happens/after-minutes'],
    ['with another throttle it runs', 'what-the-handhelds-do/one-dead'],
    ['it melted and the booster never tripped', 'how-it-comes-back/never-off'],
  ])('“%s” is heard as %s', (text, answer) => {
    expect(heardIn(text)).toContain(answer);
  });

  test.each([
    ['my short engine runs without a problem', 'which-vehicles/none-needed'],
    ['kurze Lok fährt ohne Probleme', 'which-vehicles/none-needed'],
    ['sans souci sur la même voie', 'which-places/off-track'],
    ['a second after that it comes on', 'how-it-comes-back/seconds'],
  ])('what stands on the other side of “without” and “after” is another matter: “%s” is not %s', (text, answer) => {
    expect(heardIn(text)).not.toContain(answer);
  });

  test.each([
    ['Short engine dies on the turnout', 'what-happens/switches-off'],
    ['a short piece of track', 'what-happens/switches-off'],
    ['when the attic gets hot', 'what-happens/gets-hot'],
    ['wenn es auf dem Dachboden heiß wird', 'what-happens/gets-hot'],
    ['quand le grenier est très chaud', 'what-happens/gets-hot'],
    ['als het op zolder heet wordt', 'what-happens/gets-hot'],
    ['die Loks fahren normal', 'which-vehicles/one-vehicle'],
    ['everything stops, then starts again by itself', 'what-happens/runs-by-itself'],
    ['nach ein paar Sekunden geht es wieder', 'how-it-comes-back/minutes'],
    ['the whole layout goes dead', 'which-places/anywhere'],
  ])(
    'what is short of build, a room that is hot and trains that are no others are another matter: “%s” is not %s',
    (text, answer) => {
      expect(heardIn(text)).not.toContain(answer);
    },
  );

  test.each([
    ['only short engines stop', 'which-vehicles/short-ones'],
    ['everything stops, then starts again by itself', 'how-it-comes-back/seconds'],
    ['nach ein paar Sekunden geht es wieder', 'how-it-comes-back/seconds'],
    ['the whole layout goes dead', 'what-happens/switches-off'],
    ['it is a dead short', 'what-happens/switches-off'],
    ['the booster gets hot', 'what-happens/gets-hot'],
    ['the track piece gets hot', 'what-happens/gets-hot'],
    ['I get a short while crossing the gap', 'what-happens/switches-off'],
    ['it trips when the attic gets hot', 'weather/warm'],
    ['im Sommer, wenn es auf dem Dachboden heiß wird', 'weather/warm'],
    ['die anderen Loks fahren normal', 'which-vehicles/one-vehicle'],
  ])('and the word still tells where it does: “%s” is %s', (text, answer) => {
    expect(heardIn(text)).toContain(answer);
  });

  test('where words stand apart it is said so', () => {
    const said = LISTENER.hear('the train, after some time, crosses slowly the gap').flatMap(({ words }) =>
      words.join(' '),
    );
    expect(said.some((words) => words.includes('crosses … the gap') || words.includes('crosses … gap'))).toBe(true);
  });

  test('both words of a programming track are said as what made it think so', () => {
    const said = LISTENER.hear('Nothing on the programming track').find(({ option }) => option === 'cannot-be-read');
    expect(said?.words).toEqual(expect.arrayContaining(['programming', 'track']));
    const small = LISTENER.hear('there is nothing on a programming track').flatMap(({ words }) => words);
    expect(small).not.toContain('a');
  });
});

describe('Each line that people say', () => {
  test('is heard as its own answer, in every language; at most one in twenty is said alike for another', () => {
    const lines = SAID.flatMap(({ check, option, lines: own }) =>
      Object.values(own)
        .flat()
        .map((line) => ({ line, answer: `${check}/${option}` })),
    );
    const lost = lines.filter(({ line, answer }) => !heardIn(line).includes(answer));
    expect(lost.length).toBeLessThan(lines.length / 20);
  });

  test.each(PHRASES.map((phrases, at) => ({ language: LANGUAGES[at] ?? '', phrases })))(
    'in $language too',
    ({ phrases }) => {
      const lines = [...phrases].flatMap(([answer, own]) => own.map((line) => ({ line, answer })));
      const lost = lines.filter(({ line, answer }) => !heardIn(line).includes(answer));
      expect(lines.length).toBeGreaterThan(300);
      expect(lost.length).toBeLessThan(lines.length / 20);
    },
  );
});

/** What a reader tapped for a case, or else what was found for it. */
function coded({ taps, tapsOfAnother, shown }: (typeof REPORTED_CASES)[number], check: string): readonly string[] {
  const tapped = [taps[check], tapsOfAnother?.[check]].filter((one) => one !== undefined);
  const found = shown[check];
  return tapped.length > 0 || found === undefined || found === 'cannot' ? tapped : [found];
}

describe('On the reported cases, as they were told', () => {
  const chips = REPORTED_CASES.flatMap((one) =>
    LISTENER.hear(one.told).flatMap(({ check, option }) => {
      const answers = coded(one, check);
      return answers.length === 0 ? [] : [answers.includes(option)];
    }),
  );

  test('three chips in four that a reader spoke of too agree with that reader', () => {
    expect(chips.length).toBeGreaterThan(80);
    expect(chips.filter((agrees) => agrees).length / chips.length).toBeGreaterThanOrEqual(0.75);
  });
});

describe('Words that only stand there too', () => {
  test.each([
    ['There is no computer and a second throttle works as well', 'what-the-handhelds-do/all-dead'],
    ['The trains keep running', 'what-happens/stops-dark'],
    ['The booster is far from the door', 'which-places/with-distance'],
    ['It works in one direction', 'what-is-reported/fine'],
    ['The other booster is fine', 'which-vehicles/one-vehicle'],
    ['At the start of summer', 'how-driven/at-the-unit'],
    ['Both have the same decoder', 'which-vehicles/one-kind'],
  ])('“%s” is not heard as %s', (text, answer) => {
    expect(heardIn(text)).not.toContain(answer);
  });
});

describe('Words that decide', () => {
  test.each([
    ['with the third train the command station restarts', 'booster-lamp/goes-out-and-on'],
    ['aan het eind van de zaal valt alles weg', 'which-places/with-distance'],
    ['yesterday I cleaned the wheels', 'last-change/vehicle'],
    ['the decoders get hot', 'what-happens/gets-hot'],
    ['one decoder after the other dies, and the bulbs go too', 'what-happens/fast-or-bright'],
    ['it smelled for a moment', 'danger-now/browned'],
    ['it shorts even on the programming track', 'programming-track/shorts-there'],
    ['Its wheels spin on the hill', 'what-happens/wheels-spin'],
    ['it does not pull its ten wagons any more', 'what-happens/wheels-spin'],
    ['am Berg drehen die Räder durch', 'what-happens/wheels-spin'],
    ['the more trains run the lights fade', 'what-happens/slow-or-dim'],
    ['plugged into the command station itself it works', 'what-the-handhelds-do/weak-bus'],
    ['all other locos OK', 'which-vehicles/one-vehicle'],
    ['just hardwired', 'last-change/vehicle-opened'],
    ['with an auto reverser', 'what-is-between/reverser'],
    ['then comes back', 'how-it-comes-back/seconds'],
    ['each half runs perfectly on its own', 'each-stage-alone/only-together'],
    ['no reversing loop', 'what-reverses/none'],
    ['One pair of feed wires', 'wires-by-eye/few-feeders'],
    ['decoder pretty warm', 'danger-now/warm-or-was-hot'],
  ])('“%s” is heard as %s', (text, answer) => {
    expect(heardIn(text)).toContain(answer);
  });

  test('what pulls less is not heard as slow or dim', () => {
    expect(heardIn('it does not pull its ten wagons any more')).not.toContain('what-happens/slow-or-dim');
  });
});

describe('One that was only handled', () => {
  test.each([
    ['I programmed one engine and now all of them have that number', 'which-vehicles/one-vehicle'],
    ['the meter says 14.8 volts all over', 'which-places/anywhere'],
    ['I run it from a bench supply', 'last-change/supply'],
  ])('“%s” is not heard as %s', (text, answer) => {
    expect(heardIn(text)).not.toContain(answer);
  });
});

test('What made it think so is said in the words that were written', () => {
  const words = LISTENER.hear("One loco hums and won't read").flatMap((one) => one.words);
  expect(words).toContain("won't");
  expect(words).not.toContain('wo');
});
