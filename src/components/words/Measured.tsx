// A sentence of the content where a page is written once for both systems: the switch at its foot chooses which is shown. In an
// island the lengths and wires of a sentence are filled already, and this is the sentence itself.
import { measureParts } from './measured.ts';
import { Numbers } from './numbers.ts';

export function Measured({ text, language }: { readonly text: string; readonly language: string }) {
  const parts = measureParts(text, new Numbers(language), new Numbers(language, 'feet-and-gauge'));
  return (
    <>
      {parts.map((part) =>
        typeof part === 'string' ? (
          part
        ) : (
          <>
            <span class="in-metric">{part.metric}</span>
            <span class="in-feet">{part.feet}</span>
          </>
        ),
      )}
    </>
  );
}
