// The virtual layout: two districts with units, rails and vehicles, in time, and what happens and is read off there.
export type {
  StageIndex,
  TableFeeder,
  TableJoin,
  TableLayout,
  TableMeter,
  TableRail,
  TableStage,
  TableSupply,
  TableVehicle,
} from './layout.ts';
export { GAPPED } from './layout.ts';
export type { Place } from './meter.ts';
export { mostlyStray } from './meter.ts';
export { capacitorAmps, STAGE_TAKES } from './moment.ts';
export type { Snapshot, TableRun } from './table.ts';
export { moveTo, resetStage, rewire, snapshot, startTable, step, throttle } from './table.ts';
