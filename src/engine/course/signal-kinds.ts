// Kinds of questions about the signal.
import { bitTimes } from '../signal/index.ts';
import type { Kind } from './check.ts';

type Bit = 0 | 1;
const bits = (count: number, bit: Bit): Bit[] => Array.from({ length: count }, () => bit);
const timeOf = (all: readonly Bit[]): number => bitTimes(all).at(-1) ?? 0;

/** Questions on the signal: the least and the largest answer asked for, seconds. Source: own-choice. */
export const SIGNAL_KINDS = {
  /** How long a command takes on the cable. Source: nmra-s-9-1. */
  'command-time': {
    range: [0.001, 0.02],
    make: (draw) => {
      const [ones, zeros] = [draw(22, 24, 26, 28, 30), draw(14, 16, 18, 20)];
      const [one, zero] = [timeOf(bits(1, 1)), timeOf(bits(1, 0))];
      return {
        given: {
          ones: { value: ones, unit: 'pieces' },
          one: { value: one, unit: 's' },
          zeros: { value: zeros, unit: 'pieces' },
          zero: { value: zero, unit: 's' },
        },
        unit: 's',
        right: timeOf([...bits(ones, 1), ...bits(zeros, 0)]),
        mistakes: { 'halves-only': (ones * one + zeros * zero) / 2, 'ones-only': ones * one },
      };
    },
  },
} as const satisfies Readonly<Record<string, Kind>>;
