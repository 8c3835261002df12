// The numbers that lessons say, by the names their texts give them: the engine's, with the settings their figures begin from. A text says
// `{four-moving-share}`; a name that is not here stops the build. One file for each lesson.
import type { Numbers } from '../../components/words/index.ts';
import { BREAKERS } from './breakers.ts';
import { FEED_THE_NEW_PART } from './feed-the-new-part.ts';
import { GAP_BOTH_RAILS } from './gap-both-rails.ts';
import { LARGER_SUPPLY_FIRST } from './larger-supply-first.ts';
import { LAY_FEEDERS } from './lay-feeders.ts';
import { LOOKING_AFTER_IT } from './looking-after-it.ts';
import { NO_SINGLE_NUMBER } from './no-single-number.ts';
import { ONE_TRAIN_TWO_SUPPLIES } from './one-train-two-supplies.ts';
import { TEST_THE_SHORT } from './test-the-short.ts';
import { TURNOUTS_AND_LAMPS } from './turnouts-and-lamps.ts';
import { TWO_LABELS } from './two-labels.ts';
import { VOLTAGE_ALONG_THE_TRACK } from './voltage-along-the-track.ts';
import { WHERE_TO_DIVIDE } from './where-to-divide.ts';
import { WILL_IT_TRIP } from './will-it-trip.ts';
import type { Written } from './written.ts';
import { YOUR_OWN_CONSUMPTION } from './your-own-consumption.ts';

const ALL: Written = {
  ...NO_SINGLE_NUMBER,
  ...YOUR_OWN_CONSUMPTION,
  ...TWO_LABELS,
  ...LARGER_SUPPLY_FIRST,
  ...WHERE_TO_DIVIDE,
  ...ONE_TRAIN_TWO_SUPPLIES,
  ...GAP_BOTH_RAILS,
  ...FEED_THE_NEW_PART,
  ...VOLTAGE_ALONG_THE_TRACK,
  ...LAY_FEEDERS,
  ...WILL_IT_TRIP,
  ...TEST_THE_SHORT,
  ...TURNOUTS_AND_LAMPS,
  ...BREAKERS,
  ...LOOKING_AFTER_IT,
};

const PLACE = /\{([a-z][a-z0-9-]*)\}/g;

/** A text with its numbers; one that differs between the two systems of measures stays a place for both. */
export const withNumbers = (text: string, metric: Numbers, feet: Numbers): string =>
  text.replace(PLACE, (_, name: string) => {
    const write = ALL[name];
    if (write === undefined) throw new Error(`No number "${name}" in src/layouts/numbers; it is said in “${text}”`);
    const [inMetric, inFeet] = [write(metric), write(feet)];
    return inMetric === inFeet ? inMetric : `{either:${inMetric}|${inFeet}}`;
  });
