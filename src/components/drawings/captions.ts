// What stands below a drawing, by keys of the room `drawings`: a sentence, and for some a list.

/** What its list names: `drawing-…`. */
export const listBelow = (id: string): readonly string[] =>
  id === 'labels' ? ['kind', 'volts', 'amps', 'centre'] : [];

export const captionKeys = (id: string): string[] => [
  `${id}-caption`,
  ...listBelow(id).map((name) => `drawing-${name}`),
];
