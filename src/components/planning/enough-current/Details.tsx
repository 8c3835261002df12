// The numbers of the answer to "Is my power enough?", each down to its workings, and what was assumed.
import type { RuleResult, Working } from '../../../engine/index.ts';
import { demandWorking } from '../../../engine/index.ts';
import type { Conclusion, Reckoning } from '../../../wizards/enough-current/index.ts';
import type { Answers } from '../../../wizards/planning/index.ts';
import { Reader } from '../../../wizards/planning/index.ts';
import type { WorkedOutProps } from '../frame/index.ts';
import { assumedLines, Workings } from '../frame/index.ts';
import { levelsOf, limitWords } from './answer-texts.ts';

interface Found extends WorkedOutProps {
  readonly reckoning: Reckoning;
  readonly conclusion: Conclusion;
}

/** Name, value as shown, how it came about. */
type Row = readonly [name: string, value: string, working: Working];

export function Details(props: Found) {
  const { conclusion, reckoning, say, numbers, home } = props;
  const { summary, power, plainSum } = reckoning;
  const { fleet, scale, load } = reckoning;
  const amps = numbers.ampsExactly.bind(numbers);
  const drawn = (key: string, value: number): Row => [
    say(key),
    amps(value),
    demandWorking(fleet, scale, value, load.distribution),
  ];
  const rows: Row[] = [
    drawn('number-mean', summary.mean),
    drawn('number-p95', summary.p95),
    drawn('number-most', summary.most),
    [say('number-sum'), amps(plainSum.value), plainSum],
  ];
  const { mayMove, more } = conclusion;
  const levels = levelsOf(reckoning);
  if (power !== undefined && levels !== undefined) {
    const { usable, hard, working, atBest } = levels;
    const { everyday } = power.judgement;
    rows.push([say('number-usable'), amps(usable), working], [say('number-hard'), amps(hard), working]);
    if (atBest !== undefined) {
      rows.push([say('number-usable-best'), amps(atBest.usable), working]);
      rows.push([say('number-hard-best'), amps(atBest.hard), working]);
    }
    if (mayMove !== undefined && reckoning.trains > 0) {
      rows.push([say('number-may-move'), String(mayMove.enough), everyday.working]);
      rows.push([say('number-may-move-tight'), String(mayMove.tight), everyday.working]);
    }
    if (more !== undefined) {
      rows.push([say('number-more', { kind: say(`kind-${more.kind}`) }), String(more.count), everyday.working]);
    }
  }
  return (
    <section class="part">
      <Assumptions {...props} />
      <p class="small">{say('numbers-hint')}</p>
      <ul class="numbers">
        {rows.map(([name, value, working]) => (
          <li key={name}>
            <details>
              <summary>
                <span>{name}</span> <b class="num">{value}</b>
              </summary>
              <Workings working={working} say={say} numbers={numbers} home={home} />
            </details>
          </li>
        ))}
      </ul>
      {power !== undefined && levels !== undefined && (
        <Rules {...{ say, numbers, home }} judgement={power.judgement} capacity={levels} />
      )}
      <HowItIsMeant {...props} />
      {conclusion.remedies.length > 0 && <HowRemedies {...props} />}
    </section>
  );
}

/** What the verdict does not say: how many overloads, how a transformer is judged, and what own measurements stand for. */
function HowItIsMeant({ reckoning, say, numbers }: Found) {
  const { power, measuredTimes, busyMinutes } = reckoning;
  if (power === undefined) return null;
  const { overloads, supply } = power;
  const band = {
    minutes: numbers.plain(busyMinutes, 0),
    least: numbers.plain(overloads.from, 0),
    most: numbers.plain(overloads.to, 0),
  };
  return (
    <ul class="notes">
      {overloads.to >= 1 && <li>{say('overloads-line', band)}</li>}
      {supply.kind === 'ac' && <li>{say('transformer-line')}</li>}
      {measuredTimes !== undefined && <li>{say('measured-times', { times: numbers.plain(measuredTimes, 2) })}</li>}
    </ul>
  );
}

function HowRemedies({ say, home }: Found) {
  return (
    <details>
      <summary>{say('remedies-how-title')}</summary>
      <p>{say('remedies-how')}</p>
      <p class="small">
        {say('working-sources')}: <a href={`${home}sources/#own-derivation`}>{say('source-own-derivation')}</a>
      </p>
    </details>
  );
}

type RulesProps = Pick<Found, 'say' | 'numbers' | 'home'> &
  Pick<NonNullable<Reckoning['power']>, 'judgement' | 'capacity'>;

export function Rules({ judgement, capacity, say, numbers, home }: RulesProps) {
  const amps = numbers.ampsExactly.bind(numbers);
  const compare = (rule: RuleResult) => ({ value: amps(rule.value), limit: amps(rule.limit) });
  const rules: [string, RuleResult, Record<string, string>][] = [
    [
      'everyday',
      judgement.everyday,
      {
        usable: amps(capacity.usable),
        above: numbers.share(judgement.aboveUsable),
        hard: amps(capacity.hard),
        'hard-share': numbers.share(judgement.aboveHard),
      },
    ],
    ['stall', judgement.stall, compare(judgement.stall)],
    ['power-up', judgement.powerUp, compare(judgement.powerUp)],
    ['heat', judgement.heat, compare(judgement.heat)],
  ];
  return (
    <ul class="rules">
      {rules.map(([id, rule, values]) => (
        <li key={id}>
          <details>
            <summary>
              <span class={`tag ${rule.passes ? 'enough' : 'short'}`}>
                {say(rule.passes ? 'rule-kept' : 'rule-broken')}
              </span>{' '}
              <b>{say(`rule-${id}`)}</b>: {say(`rule-${id}-text`, values)}
            </summary>
            <Workings working={rule.working satisfies Working} say={say} numbers={numbers} home={home} />
          </details>
        </li>
      ))}
    </ul>
  );
}

function scaleName(answers: Answers, questions: Found['questions']): string {
  const answer = answers['scale'];
  const option = answer?.kind === 'choice' ? answer.option : 'h0';
  return questions['scale']?.fields['scale']?.options?.[option]?.label ?? option;
}

/** "Nothing" only where everything that was asked has been told. */
function howMuchAssumed({ answers, reckoning, say }: Pick<Found, 'answers' | 'reckoning' | 'say'>): string {
  const { length } = reckoning.assumptions;
  if (length > 0) return say('assumed-count', { n: length });
  return Object.values(answers).some((answer) => answer?.kind === 'unknown') ? '' : say('assumed-none');
}

/** With what it was worked out, then what was assumed and what the trains draw, one line each. */
export function assumptionLines(props: Omit<Found, 'conclusion'>): readonly [given: string, ...assumed: string[]] {
  const { reckoning, questions, say, numbers } = props;
  const { power, fleet, trains, assumptions, drawsSure } = reckoning;
  const given = say('assumed-line', {
    scale: scaleName(props.answers, questions),
    trains,
    moving: fleet.moving,
    supply:
      power === undefined
        ? say('assumed-unknown-supply')
        : `${numbers.amps(power.supply.amps)} ${say(`kind-${power.supply.kind}`)}`,
    limit: limitWords(reckoning, say, numbers),
  });
  const draws = fleet.trains.map(({ kind, count, running }) => {
    const range = { from: numbers.ampsExactly(running.from), to: numbers.ampsExactly(running.to) };
    return `${count} ${say(`kind-${kind}`)}: ${say('table-range', range)}`;
  });
  return [
    `${given} ${howMuchAssumed(props)}`.trim(),
    ...assumedLines({ assumptions, questions, say, numbers }),
    ...leastInput(props),
    ...(drawsSure === undefined ? [] : [say('assumed-draws', { sure: say(`draws-sure-${drawsSure}`) })]),
    ...draws,
  ];
}

/** A single figure at the unit's input is the most: that it runs on fewer volts too is taken for granted, and said. */
export function leastInput({ reckoning: { power }, answers, say, numbers }: Omit<Found, 'conclusion'>): string[] {
  const { volts: most, leastVolts } = new Reader(answers).inputLabel('unit');
  const volts = power?.supply.volts;
  if (volts === undefined || most === undefined || leastVolts !== undefined || volts >= most) return [];
  return [say('assumed-least-input', { most: numbers.volts(most), volts: numbers.volts(volts) })];
}

export function Assumptions(props: Omit<Found, 'conclusion'>) {
  const [given, ...assumed] = assumptionLines(props);
  return (
    <details class="assumed">
      <summary>{given}</summary>
      <ul>
        {assumed.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </details>
  );
}
