// A transformer with rectifier and capacitor under load, against ngspice.
import { describe, expect, test } from 'vitest';
import { loadedLink, NO_LOAD_RISE, railVoltage, STAGE_DROP } from '../../src/engine/power/rail-voltage.ts';
import { near } from '../near.ts';
import { ac } from '../samples.ts';
import { hasNgspice, transient } from './ngspice.ts';

const RATED = 3;
/** Capacitors that stages have, farads. Source: from-memory. */
const CAPACITORS = [2.2e-3, 4.7e-3, 10e-3];
const RISES = [NO_LOAD_RISE.from, 0.1, NO_LOAD_RISE.to];
/** Seconds: the capacitor is full after ten half waves; then two periods are looked at. */
const COURSE = { step: 1e-4, stop: 0.24, longest: 1e-4, options: '.options reltol=1e-4 method=gear' };
const SETTLED = 0.2;

/** Mean d.c. volts, d.c. amperes, and r.m.s. amperes of the transformer, with a resistor of so many ohms behind the rectifier. */
function loadedWith(volts: number, rise: number, farads: number, ohms: number) {
  const peak = Math.SQRT2 * volts * (1 + rise);
  const { time, vectors } = transient(
    [
      `Vs s 0 sin(0 ${peak} 50)`,
      `Rs s a ${(rise * volts) / RATED}`,
      ...['D1 a p DR', 'D2 0 p DR', 'D3 n a DR', 'D4 n 0 DR', '.model DR D(Is=1e-9 N=1.6 Rs=0.03)'],
      ...[`C1 p n ${farads}`, `R1 p n ${ohms}`, 'Rg n 0 1e6'],
    ],
    COURSE,
    ['v(p,n)', 'i(vs)'],
  );
  let [area, square, span] = [0, 0, 0];
  for (let i = 1; i < time.length; i++) {
    if ((time[i] ?? 0) < SETTLED) continue;
    const step = (time[i] ?? 0) - (time[i - 1] ?? 0);
    area += step * (vectors.get('v(p,n)')?.[i] ?? Number.NaN);
    square += step * (vectors.get('i(vs)')?.[i] ?? Number.NaN) ** 2;
    span += step;
  }
  return { volts: area / span, amps: area / span / ohms, rms: Math.sqrt(square / span) };
}

/** The load that takes all that the transformer is rated for. */
function atFull(volts: number, rise: number, farads: number) {
  let [heavy, light] = [volts / 8, volts * 3];
  for (let i = 0; i < 11; i++) {
    const ohms = (heavy + light) / 2;
    if (loadedWith(volts, rise, farads, ohms).rms > RATED) heavy = ohms;
    else light = ohms;
  }
  return loadedWith(volts, rise, farads, light);
}

describe.skipIf(!hasNgspice)('a transformer at its full r.m.s. current', () => {
  test.each([12, 16, 18])('%i V: the d.c. volts lie in the band that is told, and fill half of it', (volts) => {
    const band = loadedLink(volts);
    const found = RISES.flatMap((rise) => CAPACITORS.map((farads) => atFull(volts, rise, farads)));
    for (const one of found) {
      near(one.rms, RATED, 0.02);
      expect(one.volts).toBeGreaterThanOrEqual(band.from - 0.15);
      expect(one.volts).toBeLessThanOrEqual(band.to + 0.15);
    }
    const [least, most] = [Math.min(...found.map((one) => one.volts)), Math.max(...found.map((one) => one.volts))];
    expect(most - least).toBeGreaterThan((band.to - band.from) / 2);
  });

  test('16 V: 17.5 V to 19.4 V', () => {
    const { from, to } = loadedLink(16);
    near(from, 17.5, 0.05);
    near(to, 19.4, 0.05);
  });
});

describe.skipIf(!hasNgspice)('a transformer with part of its load', () => {
  test.each([50, 20, 15])('16 V on %i ohms: the rails lie in their band', (ohms) => {
    for (const rise of RISES) {
      const { volts, amps } = loadedWith(16, rise, 4.7e-3, ohms);
      const { loaded } = railVoltage(ac(RATED, 16), { kind: 'follows' }, { build: 'switching', loaded: amps });
      const { from, to } = STAGE_DROP.switching.ohms;
      // Of the rails the stage's own drop is known: the band is that of the d.c. volts before it.
      expect(volts).toBeGreaterThanOrEqual(loaded.from + amps * to - 0.15);
      expect(volts).toBeLessThanOrEqual(loaded.to + amps * from + 0.15);
    }
  });
});
