// The answer for a layout that is divided already: district by district, and what helps the one nearest to its limit.
import type { DistrictFinding, DividedLayout } from '../../../engine/index.ts';
import type { Conclusion, Divided } from '../../../wizards/enough-current/index.ts';
import type { Numbers, Say } from '../../words/index.ts';
import { listed } from '../../words/index.ts';
import type { Tone, WorkedOutProps } from '../frame/index.ts';
import { AnswerPage, Surer } from '../frame/index.ts';

interface Props extends WorkedOutProps {
  readonly conclusion: Conclusion;
  readonly divided: Divided;
}

export function DividedAnswer({ conclusion, divided, ...props }: Props) {
  const { say, numbers, answers } = props;
  const { layout } = divided;
  const texts = textsOf(divided, say, numbers, props.language);
  return (
    <AnswerPage
      {...props}
      outcome={conclusion.outcome}
      verdict={verdictOf(divided, conclusion, say)}
      toDo={props.fixes[conclusion.outcome]?.short ?? ''}
      readFirst={conclusion.readFirst}
      numbers={undefined}
      headline={texts.headline}
      lead={texts.lead}
      {...(conclusion.kind === 'depends'
        ? { decides: <p>{say('divided-depends', { worst: divided.letters[layout?.worst ?? 0] ?? '' })}</p> }
        : {})}
      {...(layout === undefined
        ? {}
        : { figure: <Districts divided={divided} layout={layout} say={say} numbers={numbers} /> })}
      surer={
        <Surer
          items={props.left.map((question) => ({ question, could: say(`could-${question}`) }))}
          answers={answers}
          questions={props.questions}
          say={say}
          onAsk={props.onAsk}
        />
      }
      facts={
        layout === undefined
          ? []
          : layout.districts.map((one, at) => factOf(one, divided.letters[at] ?? '', say, numbers))
      }
    />
  );
}

function verdictOf(
  { layout, above }: Divided,
  { kind }: Conclusion,
  say: Say,
): { readonly tone: Tone; readonly word: string } {
  if (above.length > 0) return { tone: 'short', word: say('verdict-of-lower-trip-level') };
  if (layout === undefined) return { tone: 'open', word: say('verdict-unknown') };
  const { verdict, advice } = layout;
  if (advice.kind === 'cannot-trip') return { tone: 'short', word: say('verdict-of-supply-cannot-trip') };
  if (kind === 'depends') return { tone: 'open', word: say('verdict-depends') };
  return { tone: verdict, word: say(verdict === 'tight' ? 'verdict-tight' : `verdict-surely-${verdict}`) };
}

interface Texts {
  readonly headline: string;
  readonly lead: string;
}

function textsOf(
  { letters, layout, unread, above, bears }: Divided,
  say: Say,
  numbers: Numbers,
  language: string,
): Texts {
  const named = (places: readonly number[]): string =>
    listed(
      places.map((at) => letters[at] ?? ''),
      language,
    );
  if (above.length > 0) {
    const values = { districts: listed(above, language), below: numbers.amps(bears) };
    return { headline: say('divided-above-headline', values), lead: say('divided-above-lead', values) };
  }
  if (layout === undefined) {
    const places = letters.flatMap((letter, at) =>
      unread.some((id) => id.endsWith(`-${letter.toLowerCase()}`)) ? [at] : [],
    );
    return { headline: say('divided-unread-headline'), lead: say('divided-unread-lead', { districts: named(places) }) };
  }
  const { advice, districts, worst } = layout;
  const near = districts[worst];
  const values = {
    n: districts.length,
    worst: letters[worst] ?? '',
    often: numbers.amps(near?.often ?? 0),
    usable: numbers.amps(near?.capacity.usable ?? 0),
    limit: numbers.amps(advice.kind === 'larger-supply' ? advice.amps : 0),
    moving: 'moving' in advice ? (advice.moving ?? 0) : 0,
    count: advice.kind === 'another' ? advice.districts : 0,
    districts: advice.kind === 'cannot-trip' ? named(advice.districts) : '',
    shares:
      advice.kind === 'share-out'
        ? listed(
            advice.ofTen.map((count, at) => `${letters[at]} ${numbers.plain(count, 1)}`),
            language,
          )
        : '',
  };
  const none = 'moving' in advice && advice.moving === undefined;
  return {
    headline: say(`divided-${advice.kind}-headline`, values),
    lead: say(
      advice.kind === 'share-out' ? 'lead-lopsided-split' : `divided-${advice.kind}-${none ? 'none' : 'lead'}`,
      values,
    ),
  };
}

interface TableProps {
  readonly divided: Divided;
  readonly layout: DividedLayout;
  readonly say: Say;
  readonly numbers: Numbers;
}

function Districts({ divided, layout, say, numbers }: TableProps) {
  return (
    <section class="part">
      <h2 class="h3">{say('divided-title')}</h2>
      <table class="cards">
        <thead>
          <tr>
            {COLUMNS.map((column) => (
              <th key={column} scope="col">
                {say(column)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {layout.districts.map((one, at) => (
            <tr key={divided.letters[at]}>
              <th scope="row">{divided.letters[at]}</th>
              <td data-label={say('divided-share')}>{numbers.plain(one.ofTen, 1)}</td>
              <td data-label={say('divided-often')}>{numbers.amps(one.often)}</td>
              <td data-label={say('divided-usable')}>{numbers.amps(one.capacity.usable)}</td>
              <td data-label={say('divided-short')}>{say(`divided-trips-${one.trip.kind}`)}</td>
              <td data-label={say('divided-verdict')}>
                <span class={`tag ${one.judgement.verdict}`}>{say(`verdict-${one.judgement.verdict}`)}</span>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p class="small">
        {divided.evenly && `${say('divided-evenly')} `}
        {say('divided-kept-kind')}
      </p>
    </section>
  );
}

const COLUMNS = [
  'divided-district',
  'divided-share',
  'divided-often',
  'divided-usable',
  'divided-short',
  'divided-verdict',
] as const;

/** One line for the copy as text. */
const factOf = (one: DistrictFinding, letter: string, say: Say, numbers: Numbers): string =>
  `${say('divided-district')} ${letter}: ${numbers.amps(one.often)} / ${numbers.amps(one.capacity.usable)}, ${say(`verdict-${one.judgement.verdict}`)}`;
