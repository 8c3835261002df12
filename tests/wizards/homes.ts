// Layouts that several tests begin with.

/** H0, 15 V, a 3 A unit on a 5 A supply, 1 A far away, all of the wiring described. */
export const WIRED_HOME: Readonly<Record<string, string>> = {
  system: 'two-rail',
  scale: 'h0',
  'wire-volts': '15 V',
  'wire-trip': '3 A',
  'wire-amps': '1 A',
  'supply-kind': 'dc',
  'supply-volts': '16 V',
  'supply-amps': '5 A',
  'supply-plug': 'unknown',
  'bus-length': '6 m',
  'bus-wire': '1.5 mm2',
  'track-length': '6 m',
  'feed-by': 'bus',
  'bus-shape': 'end',
  'feeder-count': '6',
  'feeder-length': '0.3 m',
  'feeder-wire': '0.5 mm2',
  'rail-kind': 'code-83',
  joints: 'plain',
};
