// Runs the circuit simulator ngspice on netlists that a test writes itself, to check the engine from outside.
//
//   describe.skipIf(!hasNgspice)('…', () => {
//     const volts = operatingPoint(['V1 a 0 15', 'R1 a b 0.5', 'R2 b 0 10'], ['a', 'b', 'i(v1)']);
//     const { time, vectors } = transient(lines, { step: 1e-8, stop: 1e-5 }, ['out', 'i(v1)']);
//     const charge = measure(lines, { step: 1e-8, stop: 1e-5 }, { charge: 'INTEG i(v1) FROM=0 TO=1e-5' }).get('charge');
//
// A wanted vector is a node (`a`), or an expression with a bracket (`i(v1)`, `v(a,b)`). ngspice folds names to lower case: use lower
// case letters, digits and `_`, and `0` for the reference. `i(v1)` flows from plus to minus inside the source: negative when it gives.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** Whether ngspice can be run here. */
export const hasNgspice = spawnSync('ngspice', ['--version'], { stdio: 'ignore' }).status === 0;

/** Tight enough for nine digits; the defaults (reltol 1e-3) show in the fifth. A line of the netlist may say `.options` again. */
const OPTIONS = '.options reltol=1e-10 vntol=1e-13 abstol=1e-15 itl1=500';
/** For transients, where 1e-10 would ask for steps that are too many. */
const TRANSIENT_OPTIONS = '.options reltol=1e-6 vntol=1e-9 abstol=1e-12 itl1=500 itl4=100';

/** How long to simulate. All in seconds. */
export interface Course {
  /** Printing step. */
  readonly step: number;
  readonly stop: number;
  /** Longest step of the integration; the printing step where it is left out. */
  readonly longest?: number;
  /** Start from the `.ic` values and `ic=` of the parts instead of from an operating point. */
  readonly fromInitial?: boolean;
  /** An `.options` line in place of the one for transients. */
  readonly options?: string;
}

export interface Transient {
  readonly time: Float64Array;
  /** One row of values for each wanted vector, by the name it was asked with. */
  readonly vectors: ReadonlyMap<string, Float64Array>;
}

/** D.c. values of the wanted vectors, volts or amperes. Throws with what ngspice printed where it finds no operating point. */
export function operatingPoint(
  netlist: readonly string[],
  wanted: readonly string[],
  options: string = OPTIONS,
): Map<string, number> {
  const { rows, printed } = simulate([...netlist, options], ['op'], wanted);
  const [row] = rows;
  if (row === undefined || rows.length !== 1) throw new Error(`ngspice found no operating point:\n${printed}`);
  return new Map(wanted.map((name, i) => [name, finite(row[i + 1], name)]));
}

/** Course of the wanted vectors over time. Throws with what ngspice printed where it gives up. */
export function transient(netlist: readonly string[], course: Course, wanted: readonly string[]): Transient {
  const { rows, printed } = simulate([...netlist, course.options ?? TRANSIENT_OPTIONS], [tran(course)], wanted);
  if (rows.length < 2) throw new Error(`ngspice gave no course:\n${printed}`);
  const column = (at: number, name: string) => Float64Array.from(rows, (row) => finite(row[at], name));
  return { time: column(0, 'time'), vectors: new Map(wanted.map((name, i) => [name, column(i + 1, name)])) };
}

/** Values of `meas tran` statements: name (lower case) to what stands behind it, `INTEG i(v1) FROM=0 TO=5u`. MIN and MAX come with six digits only. */
export function measure<Name extends string>(
  netlist: readonly string[],
  course: Course,
  measures: Readonly<Record<Name, string>>,
): Map<Name, number> {
  const names: Name[] = [];
  const commands = [tran(course)];
  for (const name in measures) {
    names.push(name);
    commands.push(`meas tran ${name} ${measures[name]}`);
  }
  const { printed } = simulate([...netlist, course.options ?? TRANSIENT_OPTIONS], commands, []);
  return new Map(
    names.map((name) => {
      const found = new RegExp(`^${name}\\s*=\\s*(\\S+)`, 'm').exec(printed)?.[1];
      if (found === undefined) throw new Error(`ngspice did not measure ${name}:\n${printed}`);
      return [name, finite(Number(found), name)];
    }),
  );
}

const tran = ({ step, stop, longest, fromInitial }: Course) =>
  `tran ${step} ${stop} 0 ${longest ?? step}${fromInitial === true ? ' uic' : ''}`;

const vector = (name: string) => (name.includes('(') ? name : `v(${name})`);

/** Writes the deck, runs it, and reads the rows: scale first, then the wanted vectors. */
function simulate(netlist: readonly string[], commands: readonly string[], wanted: readonly string[]) {
  const folder = mkdtempSync(join(tmpdir(), 'circuit-'));
  try {
    const out = join(folder, 'out.data');
    const write = wanted.length === 0 ? [] : [`wrdata out.data ${wanted.map(vector).join(' ')}`];
    const deck = [
      '* written by a test',
      ...netlist,
      '.control',
      'set numdgt=15',
      'set wr_singlescale',
      ...commands,
      ...write,
      'quit',
      '.endc',
      '.end',
      '',
    ];
    writeFileSync(join(folder, 'deck.cir'), deck.join('\n'));
    const { stdout, stderr } = spawnSync('ngspice', ['-n', '-b', 'deck.cir'], {
      cwd: folder,
      encoding: 'utf8',
      env: { ...process.env, NGSPICE_MEAS_PRECISION: '12' },
    });
    const rows = existsSync(out) ? readRows(readFileSync(out, 'utf8'), wanted.length + 1) : [];
    return { rows, printed: `${stdout}${stderr}` };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Rows of numbers; a file that lacks a column (a vector ngspice does not know) counts as none. */
function readRows(text: string, columns: number): number[][] {
  const rows = text
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '')
    .map((line) => line.split(/\s+/).map(Number));
  return rows.every((row) => row.length === columns) ? rows : [];
}

function finite(value: number | undefined, name: string): number {
  if (value === undefined || !Number.isFinite(value)) throw new Error(`ngspice gave no number for ${name}`);
  return value;
}
