// The answer to "Is my power enough?": verdict, the draw against what can be planned with, what to do, what else would help.
import { useMemo } from 'preact/hooks';
import type { Remedy, RuleResult, Working } from '../../../engine/index.ts';
import { atLeast, demandWorking } from '../../../engine/index.ts';
import type { Conclusion, Power, Reckoning } from '../../../wizards/enough-current/index.ts';
import { conclude, reckon } from '../../../wizards/enough-current/index.ts';
import type { Answers } from '../../../wizards/planning/index.ts';
import { QUESTIONS } from '../../../wizards/planning/index.ts';
import { Histogram, Slider } from '../../figures/shared/index.ts';
import { Steps, Verify } from '../../fix/index.ts';
import { MadeThen, Share } from '../../link/index.ts';
import type { Say } from '../../words/index.ts';
import type { WorkedOutProps } from '../frame/index.ts';
import { Assumed, Surer, Trial, useReckoned, useTrial, Workings } from '../frame/index.ts';

type Props = WorkedOutProps;

export function EnoughAnswer(props: Props) {
  const { answers, say, fixes, cautions, home, language, release } = props;
  const reckoning = useMemo(() => reckon(answers), [answers]);
  const concluded = useReckoned('conclude', answers, (of) => conclude(of, reckoning));
  if (concluded === undefined) return <p role="status">{say('reckoning-now')}</p>;
  const { result: conclusion } = concluded;
  const fix = fixes[conclusion.outcome];
  if (fix === undefined) return null;
  const texts = headlines(reckoning, conclusion, props);
  const verdict = reckoning.power?.judgement.verdict;
  const stop = conclusion.outcome === 'wrong-supply' || conclusion.outcome === 'rail-voltage-too-high';
  return (
    <>
      <section class="part" aria-busy={concluded.answers !== answers}>
        <p>
          <span class={`tag ${stop || verdict === undefined ? 'short' : verdict}`}>
            {say(stop ? 'verdict-stop' : `verdict-${verdict ?? 'unknown'}`)}
          </span>
        </p>
        <h1 class="verdict" tabIndex={-1}>
          {texts.headline}
        </h1>
        <MadeThen
          release={release}
          verdict={concluded.answers === answers ? conclusion.outcome : undefined}
          titleOf={(id) => fixes[id]?.title}
          say={say}
        />
        <p class="lead">{texts.lead}</p>
        <Assumptions {...props} reckoning={reckoning} />
      </section>
      <div class="two">
        <Draw {...props} reckoning={reckoning} />
        <WhatIf {...props} />
      </div>
      <Surer
        items={props.left.map((question) => ({ question, could: '' }))}
        answers={answers}
        questions={props.questions}
        say={say}
        onAsk={props.onAsk}
      />
      <Remedies {...props} conclusion={conclusion} reckoning={reckoning} />
      <section class="part">
        <h2>{say('how-to', { remedy: fix.title })}</h2>
        <Steps fix={fix} cautions={cautions} say={say} language={language} />
        <p>
          <a href={`${home}fixes/${conclusion.outcome}/`}>
            {say('full-page')}: {fix.title}
          </a>
        </p>
      </section>
      <Verify fix={fix} say={say} language={language} />
      <Details {...props} conclusion={conclusion} reckoning={reckoning} />
      <Share text={() => `${texts.headline} ${texts.lead}`} say={say} made={{ release, verdict: conclusion.outcome }} />
    </>
  );
}

interface WithReckoning extends Props {
  readonly reckoning: Reckoning;
}

interface Texts {
  readonly headline: string;
  readonly lead: string;
}

function headlines(reckoning: Reckoning, conclusion: Conclusion, props: Props): Texts {
  const { power, labels } = reckoning;
  const { outcome } = conclusion;
  const title = props.fixes[outcome]?.title ?? '';
  const lead = props.say(`lead-${outcome}`);
  if (outcome === 'wrong-supply' && labels.kind === 'not-permitted') {
    return { headline: title, lead: `${lead} ${props.say(`because-not-permitted-${labels.because}`)}` };
  }
  if (power === undefined || outcome === 'rail-voltage-too-high') return { headline: title, lead };
  return { headline: headlineOf(reckoning, power, props), lead: leadOf(reckoning, power, conclusion, props) };
}

function headlineOf(
  { fleet }: Reckoning,
  { judgement, spells, evenings, often }: Power,
  { say, numbers }: Props,
): string {
  const { verdict } = judgement;
  const values = {
    moving: fleet.moving,
    spells: numbers.plain(spells, 0),
    evenings: numbers.plain(evenings, 0),
  };
  if (verdict === 'short') return say(`headline-short-${often}`, values);
  const standing = fleet.moving === 0 && verdict !== 'tight';
  return say(standing ? 'headline-standing-ample' : `headline-${verdict}`, values);
}

function leadOf(reckoning: Reckoning, power: Power, conclusion: Conclusion, { say, numbers }: Props): string {
  const { inside, supply, capacity } = power;
  const { chosen, mayMove, outcome } = conclusion;
  const planned = chosen?.usable.map((amps) => numbers.amps(amps)) ?? [];
  const [here = '', there = ''] = planned;
  return say(`lead-${outcome}`, {
    usable: numbers.ampsExactly(capacity.usable),
    inside: numbers.share(inside),
    coaches: reckoning.fleet.coaches,
    chance: numbers.share(chosen?.aboveHard ?? 0),
    rating: numbers.amps(chosen?.ratings[0] ?? supply.amps),
    supply: numbers.amps(supply.amps),
    limit: numbers.amps(reckoning.stage.limit),
    here,
    there,
    each: here,
    districts: planned.length,
    moving: chosen?.moving ?? mayMove?.tight ?? 0,
  });
}

function scaleName(answers: Answers, questions: Props['questions']): string {
  const answer = answers['scale'];
  const option = answer?.kind === 'choice' ? answer.option : 'h0';
  return questions['scale']?.fields['scale']?.options?.[option]?.label ?? option;
}

function Assumptions(props: WithReckoning) {
  const { reckoning, say, numbers } = props;
  const { power, fleet, trains, assumptions } = reckoning;
  const line = say('assumed-line', {
    scale: scaleName(props.answers, props.questions),
    trains,
    moving: fleet.moving,
    supply:
      power === undefined
        ? say('assumed-unknown-supply')
        : `${numbers.amps(power.supply.amps)} ${say(`kind-${power.supply.kind}`)}`,
    limit: numbers.amps(reckoning.stage.limit),
  });
  const { drawsSure, ownUseDoubt } = reckoning;
  return (
    <details class="assumed">
      <summary>
        {line} {assumptions.length === 0 ? say('assumed-none') : say('assumed-count', { n: assumptions.length })}
      </summary>
      <ul>
        <Assumed assumptions={assumptions} questions={props.questions} say={say} numbers={numbers} />
        {drawsSure !== undefined && <li>{say('assumed-draws', { sure: say(`draws-sure-${drawsSure}`) })}</li>}
        {fleet.trains.map((group) => (
          <li key={group.kind}>
            {group.count} {say(`kind-${group.kind}`)}:{' '}
            <span class="num">
              {say('table-range', {
                from: numbers.ampsExactly(group.running.from),
                to: numbers.ampsExactly(group.running.to),
              })}
            </span>
          </li>
        ))}
        {ownUseDoubt !== undefined && (
          <li>
            {say('assumed-own-use', {
              amps: numbers.amps(ownUseDoubt.amps),
              verdict: say(`verdict-${ownUseDoubt.verdict}`),
            })}
          </li>
        )}
      </ul>
    </details>
  );
}

function Draw({ reckoning, say, numbers, home }: WithReckoning) {
  const { power, fleet, trains, bars } = reckoning;
  const caption = say(power === undefined ? 'figure-caption-plain' : 'figure-caption', {
    trains,
    moving: fleet.moving,
  });
  return (
    <div class="part">
      <Histogram
        id="draw"
        bars={bars}
        usable={power?.capacity.usable}
        hard={power?.capacity.hard}
        title={say('figure-title')}
        caption={caption}
        say={say}
        numbers={numbers}
      />
      <Notes say={say} numbers={numbers} reckoning={reckoning} />
      {power !== undefined && (
        <details>
          <summary>{say('working-title')}</summary>
          <Workings working={power.capacity.working} say={say} numbers={numbers} home={home} />
        </details>
      )}
    </div>
  );
}

function Notes({ reckoning, say, numbers }: Pick<WithReckoning, 'reckoning' | 'say' | 'numbers'>) {
  const { power, eveningHours } = reckoning;
  if (power === undefined) return null;
  const { rails, trip, spells, spellDigits } = power;
  return (
    <ul class="notes">
      {power.spellsCount && (
        <li>
          {say('spells-line', {
            hours: numbers.hours(eveningHours),
            spells: numbers.plain(spells, spellDigits),
          })}
        </li>
      )}
      {trip !== 'reached' && <li>{say(`trip-${trip}`)}</li>}
      {rails !== undefined && rails.finding !== 'in-range' && (
        <li>{say(`rails-${rails.finding}`, { volts: numbers.volts(rails.volts) })}</li>
      )}
    </ul>
  );
}

function WhatIf(props: Props) {
  const { say, numbers, onTell } = props;
  const tried = useTrial(props.answers);
  const { answers } = tried;
  const reckoning = useMemo(() => reckon(answers), [answers]);
  const { fleet, trains, power } = reckoning;
  const verdict = power?.judgement.verdict;
  const result = verdict && {
    tone: verdict,
    word: say(`verdict-${verdict}`),
    sentence: headlineOf(reckoning, power, props),
  };
  const set = (id: string, value: number): void =>
    tried.set({ ...answers, [id]: { kind: 'number', span: { from: value, to: value } } });
  const moving = QUESTIONS.moving.fields[0];
  const supply = QUESTIONS['supply-label'].fields.find((field) => field.id === 'supply-amps');
  const coaches = QUESTIONS.coaches.fields[0];
  const problem = (least: number, most: number): string =>
    say('what-if-problem', { least: numbers.plain(least, 1), most: numbers.plain(most, 1) });
  const mostCoaches = Math.max(20, fleet.coaches);
  const mostAmps = Math.max(10, power?.supply.amps ?? 0);
  return (
    <Trial say={say} tried={tried} result={result} onKeep={onTell}>
      {trains > 0 && (
        <Slider
          field={moving}
          label={say('what-if-moving')}
          value={fleet.moving}
          text={String(fleet.moving)}
          least={0}
          most={trains}
          step={1}
          problem={problem(0, trains)}
          onValue={(value) => set('moving', value)}
        />
      )}
      {power !== undefined && supply?.kind === 'number' && (
        <Slider
          field={supply}
          label={say('what-if-supply')}
          value={power.supply.amps}
          text={numbers.ampsExactly(power.supply.amps)}
          least={0.5}
          most={mostAmps}
          step={0.5}
          problem={problem(supply.least, mostAmps)}
          onValue={(value) => set('supply-amps', value)}
        />
      )}
      <Slider
        field={coaches}
        label={say('what-if-coaches')}
        value={fleet.coaches}
        text={String(fleet.coaches)}
        least={0}
        most={mostCoaches}
        step={1}
        problem={problem(0, mostCoaches)}
        onValue={(value) =>
          tried.set({
            ...answers,
            coaches: { kind: 'number', span: { from: value, to: value } },
            ...(answers['lamps'] === undefined && value > 0 ? { lamps: { kind: 'choice', option: fleet.lamps } } : {}),
          })
        }
      />
    </Trial>
  );
}

function Remedies({
  conclusion,
  reckoning,
  say,
  numbers,
  fixes,
  home,
}: WithReckoning & { readonly conclusion: Conclusion }) {
  if (conclusion.remedies.length === 0 || reckoning.power === undefined) return null;
  const fine = atLeast(reckoning.power.judgement.verdict, 'enough');
  return (
    <section class="part">
      <h2>{say(fine ? 'remedies-title-fine' : 'remedies-title')}</h2>
      {conclusion.labelsWanted && <p>{say('labels-unknown-note')}</p>}
      <table class="cards">
        <thead>
          <tr>
            <th scope="col">{say('remedy-column')}</th>
            <th scope="col" class="num">
              {say('usable-column')}
            </th>
            <th scope="col" class="num">
              {say('overload-column')}
            </th>
            <th scope="col">{say('verdict-column')}</th>
            <th scope="col">{say('effort-column')}</th>
          </tr>
        </thead>
        <tbody>
          {conclusion.remedies.map((remedy) => (
            <tr key={remedy.id}>
              <th scope="row">
                <a href={`${home}fixes/${remedy.id}/`}>
                  {remedyName(remedy, fixes[remedy.id]?.short ?? remedy.id, say, numbers.amps.bind(numbers))}
                </a>
                {remedy.id === conclusion.outcome && <small> {say('remedy-chosen')}</small>}
              </th>
              <td class="num" data-label={say('usable-column')}>
                {remedy.usable.map((amps) => numbers.amps(amps)).join(' | ')}
              </td>
              <td class="num" data-label={say('overload-column')}>
                {numbers.share(remedy.aboveHard)}
              </td>
              <td data-label={say('verdict-column')}>
                <span class={`tag ${remedy.verdict}`}>{say(`verdict-${remedy.verdict}`)}</span>
              </td>
              <td data-label={say('effort-column')}>{fixes[remedy.id]?.effort}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p class="small">{say('districts-joined', { list: '3\u00a0A | 2\u00a0A' })}</p>
      <details>
        <summary>{say('how-worked-out')}</summary>
        <p>{say('remedies-how')}</p>
        <p class="small">
          {say('working-sources')}: <a href={`${home}sources/#own-derivation`}>{say('source-own-derivation')}</a>
        </p>
      </details>
    </section>
  );
}

function remedyName(remedy: Remedy, short: string, say: Say, amps: (value: number) => string): string {
  if (remedy.moving !== undefined) return `${short}: ${remedy.moving}`;
  if (remedy.ratings.length === 0) return short;
  const counted =
    remedy.ratings.length > 2
      ? say('ratings-each', { n: remedy.ratings.length, amps: amps(remedy.ratings[0] ?? 0) })
      : remedy.ratings.map(amps).join(' + ');
  return `${short}: ${counted}`;
}

/** Name, value as shown, how it came about. */
type Row = readonly [name: string, value: string, working: Working];

function Details({ conclusion, reckoning, say, numbers, home }: WithReckoning & { readonly conclusion: Conclusion }) {
  const { summary, power, plainSum } = reckoning;
  const { fleet, scale } = reckoning;
  const amps = numbers.ampsExactly.bind(numbers);
  const drawn = (key: string, value: number): Row => [say(key), amps(value), demandWorking(fleet, scale, value)];
  const rows: Row[] = [
    drawn('number-mean', summary.mean),
    drawn('number-p95', summary.p95),
    drawn('number-most', summary.most),
    [say('number-sum'), amps(plainSum.value), plainSum],
  ];
  const { mayMove, more } = conclusion;
  if (power !== undefined) {
    const { usable, hard, working } = power.capacity;
    const { usableAtBest } = power;
    const { everyday } = power.judgement;
    rows.push([say('number-usable'), amps(usable), working], [say('number-hard'), amps(hard), working]);
    if (usableAtBest !== undefined) rows.push([say('number-usable-best'), amps(usableAtBest), working]);
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
      <h2>{say('numbers-title')}</h2>
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
      {power !== undefined && (
        <Rules {...{ say, numbers, home }} judgement={power.judgement} capacity={power.capacity} />
      )}
    </section>
  );
}

type RulesProps = Pick<Props, 'say' | 'numbers' | 'home'> &
  Pick<NonNullable<Reckoning['power']>, 'judgement' | 'capacity'>;

function Rules({ judgement, capacity, say, numbers, home }: RulesProps) {
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
