// What there is to measure at the gap: how long a train is across, what meters and two lamps show, what a turned part would do.
import type { GapExpected } from '../../../engine/index.ts';
import { Caution } from '../../fix/index.ts';
import type { AnswerProps } from '../frame/index.ts';
import { Workings } from '../frame/index.ts';
import { MeterTable } from '../measuring/index.ts';

/** What can hurt while one measures with a meter and with lamps. */
const CAUTIONS = ['rings-off', 'lamp-hot', 'meter-sockets'] as const;

export function GapMeasured({
  expected,
  say,
  numbers,
  home,
  cautions,
  language,
}: Pick<AnswerProps, 'say' | 'numbers' | 'home' | 'cautions' | 'language'> & { readonly expected: GapExpected }) {
  const { pickUpSpan, lasts, meters, lamps, reversed, workings } = expected;
  return (
    <details>
      <summary>{say('measured-title')}</summary>
      <div class="part">
        {lasts.kind === 'seconds' && (
          <p>
            {say('measured-lasts', {
              length: numbers.metres(pickUpSpan),
              fast: numbers.plain(lasts.seconds.from, 1),
              slow: numbers.plain(lasts.seconds.to, 1),
            })}
          </p>
        )}
        <p>{say('measured-tie')}</p>
        <div>
          {CAUTIONS.map((id) => {
            const words = cautions[id];
            return words !== undefined && <Caution key={id} words={words} form="line" say={say} language={language} />;
          })}
        </div>
        <MeterTable
          columns={[say('measured-rails'), say('measured-in-phase'), say('measured-reversed')]}
          rows={meters.map(({ meter, railToRail, inPhase, reversed: turned }) => ({
            meter,
            readings: [railToRail, inPhase, turned],
          }))}
          say={say}
          numbers={numbers}
        />
        <p>{say('measured-crosswise')}</p>
        <p>
          {say('measured-lamps', {
            right: say(`measured-look-${lamps['in-phase'].lookA}`),
            turned: say(`measured-look-${lamps.reversed.lookA}`),
          })}
        </p>
        <p>
          {say('measured-short', {
            usual: numbers.amps(reversed.typicalAmps),
            from: numbers.amps(reversed.amps.from),
            to: numbers.amps(reversed.amps.to),
          })}
        </p>
        <details>
          <summary>{say('working-title')}</summary>
          {workings.map((working) => (
            <Workings key={working.formula} working={working} say={say} numbers={numbers} home={home} />
          ))}
        </details>
      </div>
    </details>
  );
}
