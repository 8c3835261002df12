// The whole plan: what it comes to, gaps, supplies, wires, the work, tests, parts. One page, and as good on paper.
import { useCallback, useMemo } from 'preact/hooks';
import type { MeasureSystem } from '../../engine/index.ts';
import type { Plan } from '../../wizards/plan/index.ts';
import { FIX_OF_REMEDY } from '../../wizards/plan/index.ts';
import { type Ahead, Diagram } from '../diagram/index.ts';
import { Numbers, type Say } from '../words/index.ts';
import { PassOn } from './PassOn.tsx';
import { namesIn, type PartProps, type PlanProps } from './props.ts';
import {
  breakerLines,
  gapSaid,
  gapWhy,
  gapWork,
  problemSaid,
  programmingSaid,
  railsSaid,
  remedySaid,
  supplySaid,
  unplacedLines,
  unreadSaid,
  wireLines,
} from './said.ts';
import { PartsTable, TestTable } from './Tables.tsx';
import { To } from './To.tsx';
import { Work } from './Work.tsx';

interface Props extends PlanProps {
  readonly say: Say;
  readonly system: MeasureSystem;
  readonly plan: Plan;
  readonly ahead?: Ahead | undefined;
  readonly hash?: string | undefined;
}

/** What is on the page, in its order; the list of contents leads to them. */
const PARTS = ['verdict', 'gaps', 'power', 'wires', 'steps', 'tests', 'parts'] as const;

export function WholePlan({ words, say, language, system, plan, ...rest }: Props) {
  const numbers = useMemo(() => new Numbers(language, system, words), [language, system, words]);
  const names = useMemo(() => namesIn(plan.sheet, say), [plan.sheet, say]);
  const told: PartProps = { ...rest, say, language, plan, names, numbers };
  const isWhole = plan.stops.length === 0;
  const shown = PARTS.filter((part) => isWhole || part === 'verdict');
  const drawn: Readonly<Record<(typeof PARTS)[number], () => preact.JSX.Element>> = {
    verdict: () => <Verdict {...told} />,
    gaps: () => <Gaps {...told} />,
    power: () => <Power {...told} />,
    wires: () => <Wires {...told} />,
    steps: () => <Work {...told} />,
    tests: () => <TestTable {...told} />,
    parts: () => <PartsTable {...told} />,
  };
  return (
    <div class="plan">
      <h2 class="plan-name">{plan.sheet.name === '' ? say('plan-untitled') : plan.sheet.name}</h2>
      {isWhole && (
        <nav class="contents" aria-label={say('plan-contents')}>
          <ol>
            {shown.map((part) => (
              <li key={part}>
                <To to={`plan-${part}`}>{say(`plan-part-${part}`)}</To>
              </li>
            ))}
          </ol>
        </nav>
      )}
      {shown.map((part) => (
        <section key={part} class="part" id={`plan-${part}`} tabIndex={-1}>
          <h2>{say(`plan-part-${part}`)}</h2>
          {drawn[part]()}
        </section>
      ))}
      <PassOn {...told} />
    </div>
  );
}

function Verdict(told: PartProps) {
  const { plan, say, numbers, home, hash = '', pages } = told;
  const { judged, stops, unread, track } = plan;
  const fix = FIX_OF_REMEDY[judged.remedy];
  const undivided = stops.some(({ kind }) => kind === 'not-divided');
  return (
    <>
      <p class={`plan-verdict ${judged.verdict}`}>
        <b>{say(`plan-verdict-${judged.verdict}`)}</b>
      </p>
      {stops.length > 0 ? (
        <>
          <ul>
            {stops.map((one) => (
              <li key={problemSaid(one, told)}>{problemSaid(one, told)}</li>
            ))}
          </ul>
          <p>
            <a class="button" href={`${home}layout-sheet/${undivided ? '?divide' : ''}${hash}`}>
              {say(undivided ? 'plan-to-divide' : 'plan-to-sheet')}
            </a>
          </p>
        </>
      ) : (
        <p>
          {remedySaid(plan, told)}{' '}
          {fix !== undefined && (
            <a href={`${home}fixes/${fix}/`} title={pages[fix]}>
              {say('plan-remedy-page')}
            </a>
          )}
        </p>
      )}
      {judged.sure === 'depends' && <p class="small">{say('plan-verdict-depends')}</p>}
      {unread.length > 0 && (
        <>
          <h3>{say('plan-unread-title')}</h3>
          <ul>
            {unread.map((one) => (
              <li key={one.id}>{unreadSaid(one, told)}</li>
            ))}
          </ul>
          {stops.length === 0 && (
            <p>
              {say('plan-unread-where')} <a href={`${home}layout-sheet/${hash}`}>{say('plan-to-sheet')}</a>
            </p>
          )}
        </>
      )}
      {stops.length === 0 && (
        <ul>
          {track.districts.map(({ letter, metres, share }, at) => {
            const finding = judged.findings[at];
            return (
              <li key={letter}>
                {say('plan-district', {
                  district: letter,
                  metres: numbers.metres(metres),
                  share: numbers.share(share),
                })}
                {finding !== undefined &&
                  ` · ${say('plan-district-judged', {
                    often: numbers.amps(finding.often),
                    usable: numbers.amps(finding.capacity.usable),
                    verdict: say(`plan-district-verdict-${finding.judgement.verdict}`),
                  })}`}
              </li>
            );
          })}
          {track.problems
            .filter((one) => !stops.includes(one))
            .map((one) => (
              <li key={problemSaid(one, told)}>{problemSaid(one, told)}</li>
            ))}
          {unplacedLines(plan, told).map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      )}
    </>
  );
}

function Gaps(told: PartProps) {
  const { plan, say, numbers, language, names } = told;
  const { gaps } = plan.track;
  const nameOf = useCallback(({ id }: { readonly id: string }) => names.section(id), [names]);
  const gapNumbers = useMemo(() => new Map(gaps.map(({ number, joint }) => [joint.id, number])), [gaps]);
  return (
    <>
      <Diagram
        sheet={plan.sheet}
        ahead={told.ahead}
        say={say}
        numbers={numbers}
        language={language}
        nameOf={nameOf}
        gapNumbers={gapNumbers}
      />
      {gaps.length === 0 && <p>{say('plan-no-gaps')}</p>}
      <p>{programmingSaid(plan, told)}</p>
      <ol class="plan-gaps">
        {gaps.map((gap) => (
          <li key={gap.number}>
            <b>{gapSaid(gap, plan.sheet, told)}</b> · {gapWhy(gap, told)} · {gapWork(gap, told)}
            {gap.joint.awkward > 1 && ` · ${say('plan-gap-awkward')}`}
          </li>
        ))}
      </ol>
    </>
  );
}

function Power(told: PartProps) {
  const { plan, say, numbers, names } = told;
  const { judged } = plan;
  return (
    <>
      {judged.units.length === 0 && (
        <p>{say(judged.remedy === 'read-labels' ? 'plan-power-unread' : 'plan-power-first')}</p>
      )}
      <ul>
        {judged.units.map(({ district, stage, supply, moved, idle, trip, fuse }) => (
          <li key={district}>
            <b>
              {district}: {say('plan-unit', { name: names.stage(stage.id), supply: supplySaid(supply.id, plan, told) })}
            </b>
            {moved && ` · ${say('plan-moved')}`}
            {` · ${railsSaid(idle, told)}`}
            {` · ${say('plan-trips', { amps: numbers.amps(trip.trip) })}`}
            {trip.kind !== 'surely-not' && `, ${say(`plan-trip-${trip.kind}`)}`}
            {plan.power === 'listed' &&
              ` · ${
                fuse.kind === 'fuse'
                  ? say('plan-fuse', {
                      amps: numbers.ampsExactly(fuse.amps),
                      size: numbers.wire(fuse.area, 'at-least'),
                    })
                  : say('plan-no-fuse')
              }`}
          </li>
        ))}
      </ul>
      <h3>{say('plan-one-short')}</h3>
      <p>
        {say('plan-one-short-lead')}{' '}
        <a href={`${told.home}fixes/breakers-and-sub-districts/`}>{say('plan-remedy-page')}</a>
      </p>
      <ul>
        {breakerLines(plan, told).map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </>
  );
}

function Wires(told: PartProps) {
  const { plan, say } = told;
  return (
    <>
      <ul>
        {wireLines(plan, told).map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      <details class="plan-labels">
        <summary>{say('plan-labels', { n: plan.labels.reduce((sum, { count }) => sum + count, 0) })}</summary>
        <ul>
          {plan.labels.map(({ district, wire, numbers: n = 1 }) => (
            <li key={`${district} ${wire}`}>{say(`plan-labels-${wire}`, { district, n })}</li>
          ))}
        </ul>
      </details>
    </>
  );
}
