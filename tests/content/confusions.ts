// What beginners most often believe, in their own words, and the sentence of the course that clears it up.

interface Confusion {
  readonly believed: string;
  /** People’s own words, by which the search finds the lesson. */
  readonly says: string;
  readonly lesson: string;
  readonly heading: string;
  /** The sentence below the heading that clears it up. */
  readonly cleared: RegExp;
}

const one = (believed: string, says: string, lesson: string, heading: string, cleared: RegExp): Confusion => ({
  believed,
  says,
  lesson,
  heading,
  cleared,
});

const MISTAKES = 'Common mistakes';
export const CONFUSIONS: readonly Confusion[] = [
  one(
    'The size of a layout says whether it needs a booster',
    'how big a layout before I need a booster',
    'no-single-number',
    'Not the metres, not the box',
    /length of your track does not settle how much power you need/,
  ),
  one(
    'Amperes mean nothing to me',
    '2 A 4 A mean nothing to me',
    'no-single-number',
    'What an ampere is, in trains',
    /locomotive that runs takes between 0\.2 and 0\.5 A/,
  ),
  one(
    'A booster makes trains faster',
    'my booster does not boost',
    'what-a-booster-adds',
    'A repeater with muscles',
    /does not make trains faster/,
  ),
  one(
    'Trains that slow down far away need a larger supply',
    'trains get slower the farther they are bigger supply',
    'voltage-along-the-track',
    'Wire costs volts',
    /larger supply changes nothing/,
  ),
  one(
    'A train that cuts out at low speed needs a booster',
    'it cuts out at low speed buy a booster',
    'what-a-booster-adds',
    MISTAKES,
    /clean wheels and rails/,
  ),
  one(
    'Parked locomotives count as if they ran, or not at all',
    'do parked locomotives count',
    'no-single-number',
    MISTAKES,
    /as if they ran[\s\S]*Forgetting what stands/,
  ),
  one(
    'Who runs alone never needs more than the starter unit',
    'I run alone so the starter unit must do',
    'no-single-number',
    'Not the metres, not the box',
    /small oval with four sound locomotives and a lit express may not/,
  ),
  one(
    'The lamp means a short circuit',
    'overload short circuit and inrush light the same lamp',
    'turnouts-and-lamps',
    'One lamp, three meanings',
    /Too much traffic[\s\S]*A short circuit[\s\S]*A rush/,
  ),
  one(
    'Another district means more power',
    'another district means more power',
    'where-to-divide',
    MISTAKES,
    /Two parts on one unit share what there was before/,
  ),
  one(
    'Digital is a.c., so polarity does not matter',
    'digital is a.c. so polarity does not matter',
    'what-flows-in-the-rails',
    MISTAKES,
    /At each gap, crossover, loop and turntable it does/,
  ),
  one(
    'An ordinary meter on the rails is right',
    'ordinary meter on digital track',
    'your-own-consumption',
    'What you see',
    /do not judge power by a meter on the rails/,
  ),
  one(
    '“Power on” means that the rail is live',
    'command station says power on',
    'first-switch-on',
    MISTAKES,
    /Ask the rail/,
  ),
  one(
    'A lamp that blinks is a fault',
    'is a blinking light a fault',
    'first-switch-on',
    MISTAKES,
    /normal blink taken for a fault/,
  ),
  one(
    'It worked for years, so the wiring is right',
    'the wiring is right because it worked',
    'looking-after-it',
    'What a year does',
    /Copper gives way under a screw/,
  ),
  one('The newest part is to blame', 'the newest part is to blame', 'first-switch-on', MISTAKES, /It showed the fault/),
  one(
    'Boosters have protection, so nothing can burn',
    'boosters have short protection so nothing can burn',
    'will-it-trip',
    'The heat',
    /only where the wiring lets enough current through/,
  ),
  one(
    'A small layout needs filters and twisted wires',
    'do I need end filters',
    'lay-feeders',
    'Lay the bus',
    /needs neither twists nor filters/,
  ),
  one(
    'More feeders made it short',
    'more feeders made it short',
    'lay-feeders',
    'Beyond a live frog',
    /Gap both of them beyond the frog/,
  ),
];
