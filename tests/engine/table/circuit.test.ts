import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Circuit, DETECTOR, DIODE, EARTH, loadCurve, sourceCurve } from '../../../src/engine/table/circuit.ts';
import { near } from '../../near.ts';
import { spread } from '../../spread.ts';

describe('A circuit of resistors', () => {
  test('a bridge in balance carries nothing in its middle', () => {
    const circuit = new Circuit(3);
    circuit.resistor(0, 1, 10);
    circuit.resistor(1, EARTH, 20);
    circuit.resistor(0, 2, 30);
    circuit.resistor(2, EARTH, 60);
    circuit.resistor(1, 2, 5);
    circuit.push(0, 1);
    const { volts } = circuit.solve();
    near((volts[1] ?? 0) - (volts[2] ?? 9), 0, 1e-5, 'volts across the middle');
    near(volts[0] ?? 0, 30 * (90 / 120), 1e-3, 'volts over 30 and 90 ohms side by side');
  });
});

describe('A source that cannot sink', () => {
  test('gives its volts less its own drop up to its limit, and just its limit into a short', () => {
    for (const [ohms, amps] of [
      [10, 1.5 / 1.01],
      [0.001, 3],
    ] as const) {
      const circuit = new Circuit(1);
      const source = circuit.bent(0, EARTH, sourceCurve(15, 0.1, 3));
      circuit.resistor(0, EARTH, ohms);
      near(-(circuit.solve().amps[source] ?? 0), amps, 1e-4, 'amperes');
    }
  });

  test('lets the higher of two side by side carry all: the lower one is blocked', () => {
    const circuit = new Circuit(1);
    const high = circuit.bent(0, EARTH, sourceCurve(16, 0.1, 5));
    const low = circuit.bent(0, EARTH, sourceCurve(15, 0.1, 5));
    circuit.bent(0, EARTH, loadCurve(2));
    const { amps, volts } = circuit.solve();
    near(-(amps[high] ?? 0), 2, 1e-4, 'from the higher');
    near(amps[low] ?? 9, 0, 1e-6, 'into the lower');
    near(volts[0] ?? 0, 15.8, 1e-4, 'volts');
  });
});

describe('Bent parts', () => {
  test('a diode passes one way only', () => {
    const ahead = new Circuit(1);
    ahead.bent(0, EARTH, DIODE);
    ahead.push(0, 1);
    near(ahead.solve().volts[0] ?? 0, 0.75, 1e-3, 'volts at 1 A');
    const back = new Circuit(1);
    const blocked = back.bent(EARTH, 0, DIODE);
    back.resistor(0, EARTH, 1e3);
    back.push(0, 0.01);
    near(back.solve().amps[blocked] ?? 1, 0, 1e-6, 'amperes backward at 10 V');
  });

  test('a detector of the diode kind takes more than a volt either way round', () => {
    for (const sign of [1, -1]) {
      const circuit = new Circuit(1);
      circuit.bent(0, EARTH, DETECTOR);
      circuit.push(0, sign);
      near(sign * (circuit.solve().volts[0] ?? 0), 1.25, 1e-3, 'drop');
    }
  });

  const amount = spread(0.05, 20);
  const node = fc.integer({ min: -1, max: 7 });
  const part = fc.record({ from: node, to: node, kind: fc.constantFrom('ohms', 'source', 'load', 'diode'), amount });

  type Part = { from: number; to: number; kind: 'ohms' | 'source' | 'load' | 'diode'; amount: number };
  interface Flow {
    readonly from: number;
    readonly to: number;
    readonly amps: (volts: Float64Array, bent: readonly number[]) => number;
  }
  const at = (volts: Float64Array, place: number): number => (place < 0 ? 0 : (volts[place] ?? 0));

  function add(circuit: Circuit, { from, to, kind, amount: size }: Part): Flow {
    if (kind === 'ohms') {
      circuit.resistor(from, to, size);
      return { from, to, amps: (volts) => (at(volts, from) - at(volts, to)) / size };
    }
    const curves = { source: sourceCurve(size + 1, 0.1, size), load: loadCurve(size), diode: DIODE };
    const index = circuit.bent(from, to, curves[kind]);
    return { from, to, amps: (_, bent) => bent[index] ?? 0 };
  }

  test('any mixture of them settles, and what flows into a node flows out of it (Kirchhoff)', () => {
    fc.assert(
      fc.property(fc.array(part, { minLength: 3, maxLength: 30 }), (parts) => {
        const circuit = new Circuit(8);
        const flows = parts.filter(({ from, to }) => from !== to).map((one) => add(circuit, one));
        const { volts, amps, settled } = circuit.solve();
        expect(settled).toBe(true);
        for (let place = 0; place < 8; place++) {
          const out = flows.reduce((sum, flow) => {
            if (flow.from === place) return sum + flow.amps(volts, amps);
            return flow.to === place ? sum - flow.amps(volts, amps) : sum;
          }, 0);
          // What is left leaks to earth through ten megohms.
          const leak = -1e-7 * at(volts, place);
          near(out, leak, 1e-4 + Math.abs(1e-2 * leak), `node ${place}`);
        }
      }),
      { numRuns: 300 },
    );
  });
});
