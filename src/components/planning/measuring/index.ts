// What a person's own meter shows of what an answer worked out.
export { MeterTable } from './MeterTable.tsx';
