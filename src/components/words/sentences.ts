// Typography of a statement: its first sentence stands out, the rest follows.
const SEGMENTERS = new Map<string, Intl.Segmenter>();

const segmenter = (language: string): Intl.Segmenter => {
  const made = SEGMENTERS.get(language) ?? new Intl.Segmenter(language, { granularity: 'sentence' });
  SEGMENTERS.set(language, made);
  return made;
};

/** Splits a text after its first sentence, by the rules of its language ("d.c. or" is no end of one). */
export const firstSentence = (text: string, language: string): readonly [first: string, rest: string] => {
  const [first = text, ...rest] = [...segmenter(language).segment(text)].map(({ segment }) => segment.trim());
  return [first, rest.join(' ')];
};
