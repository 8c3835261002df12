import type { Say } from '../words/index.ts';

interface LedProps {
  readonly say: Say;
  readonly text: string;
  readonly to: string;
  readonly name: string;
}

/** What the page is, a sentence, and the way on. */
export function Led({ say, text, to, name }: LedProps) {
  return (
    <section class="part">
      <h1>{say('power-up-title')}</h1>
      <p>{text}</p>
      <p>
        <a class="button" href={to}>
          {name}
        </a>
      </p>
    </section>
  );
}

/** What the page is, until its tests are there. */
export function Coming({ say }: Pick<LedProps, 'say'>) {
  return (
    <section class="part">
      <h1>{say('power-up-title')}</h1>
      <p class="lead">{say('power-up-lead')}</p>
    </section>
  );
}
