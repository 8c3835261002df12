// Below the track: each stage with the bus of its district above it and its supply below it; the control cable from stage to stage.
import type { Sheet, SheetStage } from '../../wizards/sheet/index.ts';
import type { Dressed } from '../../wizards/sheet-drawing/index.ts';
import { joined, type Numbers, type Say } from '../words/index.ts';
import { DistrictTag } from './DistrictTag.tsx';
import { stageSaid } from './said.ts';

interface StagesProps {
  readonly sheet: Sheet;
  readonly dressed: Dressed;
  readonly names: ReadonlyMap<string, string>;
  readonly say: Say;
  readonly numbers: Numbers;
  readonly language: string;
}

/** What is wider than its place is reached by keyboard too. */
export const scrolled = (name: string) => ({ tabIndex: 0, role: 'group', 'aria-label': name }) as const;

export function Stages(props: StagesProps) {
  const { sheet, say } = props;
  if (sheet.stages.length === 0) return null;
  return (
    <div class="diagram-stages" {...scrolled(say('diagram-stages'))}>
      <ol>
        {sheet.stages.map((stage) => (
          <Stage key={stage.id} stage={stage} {...props} />
        ))}
      </ol>
      {sheet.stages.length > 1 && <p class="small">{say('diagram-cable')}</p>}
    </div>
  );
}

function Stage({ stage, sheet, dressed, names, say, numbers, language }: { readonly stage: SheetStage } & StagesProps) {
  const supply = sheet.supplies.find(({ id }) => id === stage.supply);
  const own = dressed.districts.flatMap((district, place) =>
    district.stage === stage.id ? [{ ...district, place }] : [],
  );
  const fed = (stage.feeds ?? []).map((id) => names.get(id) ?? id);
  return (
    <li>
      <div class="bus">
        {own.map(({ letter, place }) => (
          <DistrictTag key={letter} place={place}>
            {say('diagram-district', { district: letter })}
          </DistrictTag>
        ))}
        {own.length === 0 && (
          <span>{say(dressed.districts.length === 0 ? 'diagram-track' : 'diagram-no-district')}</span>
        )}
      </div>
      <div class="box">
        <b>{stageSaid(stage.id, sheet, say)}</b>
        <span>
          {stage.limitAmps === undefined
            ? say('diagram-limit-not-read')
            : say('diagram-limit', { amps: numbers.amps(stage.limitAmps) })}
        </span>
        {fed.length > 0 && <span class="small">{say('diagram-feeds', { sections: joined(fed, language) })}</span>}
      </div>
      <div class="box supply">
        <b>{supply?.name ?? say('diagram-supply')}</b>
        <span>{labelSaid(supply, say, numbers)}</span>
      </div>
    </li>
  );
}

function labelSaid(supply: Sheet['supplies'][number] | undefined, say: Say, numbers: Numbers): string {
  if (supply === undefined) return say('diagram-no-supply');
  const { kind, volts, amps } = supply;
  if (amps === undefined) return say('diagram-label-not-read');
  if (kind === undefined || volts === undefined) return say('diagram-label-amps', { amps: numbers.amps(amps) });
  return say(`diagram-label-${kind}`, { volts: numbers.volts(volts), amps: numbers.amps(amps) });
}
