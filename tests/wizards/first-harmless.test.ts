// The first repair that is proposed must not harm, whatever the cause turns out to be.
import { beforeAll, describe, expect, test } from 'vitest';
import { TOOLS } from '../../src/engine/diagnosis/model.ts';
import type { Seen } from '../../src/engine/diagnosis/posterior.ts';
import { signPosterior } from '../../src/engine/diagnosis/sign-shown.ts';
import type { NextStep } from '../../src/engine/index.ts';
import { SIGN_MODEL } from '../../src/wizards/put-it-right/model/index.ts';
import type { Known } from '../../src/wizards/put-it-right/step.ts';
import { stateOf, stepOf, walkModelNow } from '../../src/wizards/put-it-right/step.ts';
import { answerCheck } from '../judge/answers/index.ts';
import type { TableFault } from '../judge/injection.ts';
import { TABLE_FAULTS } from '../judge/injection.ts';
import type { Injected, Walked } from '../judge/walks.ts';
import { allInjected, classOf, injected, WITHOUT_METER, walk } from '../judge/walks.ts';

const HARMS = Object.entries(SIGN_MODEL.harms ?? {});
const RISKY = new Set(HARMS.flatMap(([, faults]) => faults));
const LAYOUTS = 10;

describe('A cause under which a repair harms', () => {
  const walks: Walked[] = [];

  beforeAll(() => {
    for (const one of allInjected(LAYOUTS)) {
      // A trouble that is away while one looks shows nothing: what holds then stands below.
      if (!RISKY.has(one.fault) || one.well !== undefined) continue;
      for (const tools of [TOOLS, WITHOUT_METER, []]) walks.push(walk(one, { tools }));
    }
  }, 120_000);

  const firstOf = (fault: TableFault) => walks.filter((one) => one.fault === fault).map(({ proposed }) => proposed[0]);

  test('is a leak, or a bad contact on the way from the mains', () => {
    expect([...RISKY].sort()).toEqual(['leak', 'mains-sag', 'socket-damaged', 'wet-ballast']);
    expect(walks.length).toBeGreaterThan(60);
  });

  test.each(TABLE_FAULTS.filter((fault) => RISKY.has(fault)))('%s: never leads to it first', (fault) => {
    const harmful = HARMS.filter(([, faults]) => faults.includes(fault)).map(([fixClass]) => fixClass);
    expect(firstOf(fault).filter((first) => first !== undefined && harmful.includes(first))).toEqual([]);
  });

  test.each(['high-trip', 'supply-limit', 'overload-total'] as const)(
    'is hardly possible any more where %s leads to it',
    (fault) => {
      let proposed = 0;
      for (let seed = 1; seed <= 12; seed++) {
        const one = injected(fault, seed);
        if (one === undefined) continue;
        const { step, known } = toProposal(one);
        if (step.kind !== 'fix' || step.fixClass !== classOf(fault)) continue;
        proposed += 1;
        const { causes } = signPosterior(walkModelNow(), stateOf(known));
        for (const harmed of SIGN_MODEL.harms?.[step.fixClass] ?? [])
          expect(causes.find((cause) => cause.fault === harmed)?.chance ?? 0).toBeLessThanOrEqual(0.05);
      }
      expect(proposed).toBeGreaterThan(2);
    },
  );
});

/** Goes on until something is proposed. */
function toProposal({ opening, complaint, layout }: Injected): { readonly step: NextStep; readonly known: Known } {
  const answers: Seen[] = [];
  const skipped: string[] = [];
  const trusted = new Set<string>();
  const known = { complaint: opening, answers, skipped, tools: WITHOUT_METER, tried: [], trusted };
  for (;;) {
    const step = stepOf(known);
    if (step.kind !== 'ask') return { step, known };
    const option = answerCheck(layout, complaint, step.check);
    trusted.add(step.check);
    if (option === undefined) skipped.push(step.check);
    else answers.push({ check: step.check, option });
  }
}
