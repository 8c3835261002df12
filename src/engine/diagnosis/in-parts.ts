// Work that can be done a part at a time, so that whoever does it can let something else have its turn in between.

/** Each step does a part; the last one gives what all of them made. */
export type InParts<Made> = Generator<void, Made>;

/** What each row becomes, row by row. */
export function* eachInParts<Row, Made>(rows: readonly Row[], make: (row: Row) => Made): InParts<Made[]> {
  const made: Made[] = [];
  for (const row of rows) {
    made.push(make(row));
    yield;
  }
  return made;
}
