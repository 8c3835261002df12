// Published tables of wire and rail, and lengths worked out from them.
import { describe, expect, test } from 'vitest';
import { parseQuantity } from '../../src/engine/quantity-text.ts';
import { gaugeArea } from '../../src/engine/units.ts';
import type { Conductor, Make } from '../../src/engine/wiring/wire.ts';
import { COPPER, ohmsPerMetre, RAILS, WIRE_TABLE } from '../../src/engine/wiring/wire.ts';
import { near } from '../near.ts';

const mm2 = (area: number, make: Make = 'flexible'): Conductor => ({ area: area * 1e-6, make });
const awg = (gauge: number, make: Make = 'solid'): Conductor => ({ area: gaugeArea(gauge), make });

// IEC 60228:2004, tables 1 to 3, plain copper at 20 degrees Celsius, most ohms a kilometre: class 1 and 2, class 5 and 6.
const IEC_60228: readonly (readonly [area: number, solid: number, flexible: number])[] = [
  [0.5, 36.0, 39.0],
  [0.75, 24.5, 26.0],
  [1, 18.1, 19.5],
  [1.5, 12.1, 13.3],
  [2.5, 7.41, 7.98],
  [4, 4.61, 4.95],
];

describe('IEC 60228:2004', () => {
  test.each(IEC_60228)('%d mm2: %d ohm/km solid, %d ohm/km flexible', (area, solid, flexible) => {
    near(ohmsPerMetre(mm2(area, 'solid')) * 1000, solid, 1e-9);
    near(ohmsPerMetre(mm2(area, 'flexible')) * 1000, flexible, 1e-9);
  });

  test('has no other rows here', () => {
    expect(WIRE_TABLE.map((row) => row.squareMillimetres)).toEqual(IEC_60228.map(([area]) => area));
  });

  // The table gives the most that is allowed. A maker may draw the wire thinner than its name and twist it, which lengthens
  // the strands, so the table stands 4 to 8 % (solid) and 13 to 16 % (flexible) above copper of the full area.
  test.each(IEC_60228)(
    '%d mm2 stands above copper of that area by the surcharge of its class',
    (area, solid, flexible) => {
      const copper = (COPPER * 1e6 * 1000) / area;
      near(solid / copper, 1.06, 0.02);
      near(flexible / copper, 1.145, 0.015);
    },
  );

  // DIN VDE 0295, bunched wire, a reprint that had lost its columns (so medium): 0.14 mm2 134-138, 0.25 mm2 76-79 ohm/km.
  test('carried on below its thinnest row it meets DIN VDE 0295 within 1.5 %', () => {
    near(ohmsPerMetre(mm2(0.14)) * 1000, 136, 0.015 * 136 + 2);
    near(ohmsPerMetre(mm2(0.25)) * 1000, 77.5, 0.015 * 77.5);
  });

  // From memory, not looked up: 6 mm2 3.08 and 3.30 ohm/km, 10 mm2 1.83 and 1.91 ohm/km.
  test('carried on above its thickest row it meets 6 and 10 mm2 within 4 %', () => {
    near(ohmsPerMetre(mm2(6, 'solid')) * 1000, 3.08, 0.01 * 3.08);
    near(ohmsPerMetre(mm2(6)) * 1000, 3.3, 0.01 * 3.3);
    near(ohmsPerMetre(mm2(10, 'solid')) * 1000, 1.83, 0.04 * 1.83);
    near(ohmsPerMetre(mm2(10)) * 1000, 1.91, 0.04 * 1.91);
  });
});

// Diameter, area, ohms a kilometre of solid copper at 20 degrees: the tables of NBS Handbook 100 (1966), which says ASTM B258-61, and
// of the HyperPhysics wire-gauge page; ohms from their ohms for 1000 ft.
const GAUGES: readonly (readonly [gauge: number, millimetres: number, area: number, ohms: number])[] = [
  [10, 2.588, 5.261, 3.277],
  [12, 2.053, 3.309, 5.21],
  [14, 1.628, 2.081, 8.284],
  [16, 1.291, 1.309, 13.18],
  [18, 1.024, 0.823, 20.95],
  [20, 0.812, 0.518, 33.3],
  [22, 0.644, 0.326, 52.95],
  [24, 0.511, 0.205, 84.22],
];

describe('American wire gauge', () => {
  // The tables have four digits; the formula meets them to one in the last.
  test.each(GAUGES)('%d is %d mm thick, %d mm2, %d ohm/km', (gauge, millimetres, area, ohms) => {
    near(Math.sqrt((gaugeArea(gauge) * 4) / Math.PI) * 1000, millimetres, 0.0006);
    near(gaugeArea(gauge) * 1e6, area, 0.0006);
    near(ohmsPerMetre(awg(gauge)) * 1000, ohms, 0.0008 * ohms);
  });

  test('ten numbers are a tenth of the metal, nearly', () => near(gaugeArea(10) / gaugeArea(20), 10.16, 0.01));
});

describe('temperature', () => {
  // National Electrical Code, chapter 9, table 8, at 75 degrees Celsius, ohms for 1000 ft. These values fit solid wire, though the page
  // they were read on calls them stranded.
  test.each([
    [14, 3.07],
    [12, 1.93],
    [10, 1.21],
  ])('%d AWG at 75 degrees: %d ohm for 1000 ft', (gauge, ohms) => {
    near(ohmsPerMetre(awg(gauge), 75) * 304.8, ohms, 0.006);
  });

  test('75 degrees against 20: 1.216, so the two columns must not be mixed', () => {
    near(ohmsPerMetre(mm2(1.5), 75) / ohmsPerMetre(mm2(1.5)), 1.216, 0.0005);
  });

  // National Electrical Code, chapter 9, table 8, stranded, from memory: 3.14, 1.98, 1.24.
  test.each([
    [14, 3.14],
    [12, 1.98],
    [10, 1.24],
  ])('%d AWG stranded at 75 degrees: %d ohm for 1000 ft', (gauge, ohms) => {
    near(ohmsPerMetre(awg(gauge, 'flexible'), 75) * 304.8, ohms, 0.011);
  });
});

// Worked out by hand for this site from IEC 60228 class 5: share x 15 V / (2 x ohms a metre x 5 A), metres one way.
describe('how far a pair of flexible wires reaches at 15 V and 5 A', () => {
  const reach = (area: number, share: number) => (share * 15) / (2 * ohmsPerMetre(mm2(area)) * 5);

  test.each([
    [0.5, 1.9, 3.8],
    [0.75, 2.9, 5.8],
    [1, 3.8, 7.7],
    [1.5, 5.6, 11.3],
    [2.5, 9.4, 18.8],
    [4, 15.2, 30.3],
  ])('%d mm2: %d m for 5 %, %d m for 10 %', (area, five, ten) => {
    near(reach(area, 0.05), five, 0.05);
    near(reach(area, 0.1), ten, 0.051);
  });
});

describe('rails', () => {
  // A radio amateur's measurement with 1 A of direct current: code 100 nickel silver 1.45 milliohms an inch, brass 18.9 milliohms
  // a metre. Single samples. The same person's #16 copper, 0.33 milliohms an inch, shows how well the method does.
  test('1.45 milliohms an inch of code 100 are 57.1 milliohms a metre', () => {
    const parsed = parseQuantity('1.45 mohm/in', 'resistance-per-metre');
    expect(parsed.kind).toBe('span');
    if (parsed.kind === 'span') near(parsed.span.from, RAILS['code-100'].ohmsPerMetre.from, 0.00005);
  });

  test('that method finds 16 AWG copper within 1.5 % of its table', () => {
    near(0.33e-3 / 0.0254, ohmsPerMetre(awg(16)), 0.015 * 0.01317);
  });
});
