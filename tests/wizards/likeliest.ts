// What a person with a cause most likely says at a check, read off the model itself: that proves consistency, not truth.
import { walkModelNow } from '../../src/wizards/put-it-right/step.ts';

/** The likeliest option of a check under a cause, circumstances averaged; undefined where one of them is unknown. */
export function likeliest(cause: string, check: string): string | undefined {
  const { tables } = walkModelNow();
  const at = tables.model.causes.findIndex(({ id }) => id === cause);
  const place = tables.checkAt.get(check) ?? -1;
  const row = tables.causes[at];
  const options = tables.model.checks[place]?.options ?? [];
  if (row === undefined || options.length === 0) return undefined;
  const { by, chances } = tables.expected(row, place, false);
  const { of, size } = tables.dims.of(by);
  const sums = options.map((_, option) => {
    let sum = 0;
    for (let k = 0; k < size; k++) {
      const weight = of.reduce(
        (product, dim) => product * (row.circumstances[dim]?.[tables.dims.within(by, 1 << dim)[k] ?? 0] ?? 0),
        1,
      );
      sum += weight * (chances[k * options.length + option] ?? 0);
    }
    return sum;
  });
  return options[sums.indexOf(Math.max(...sums))];
}
