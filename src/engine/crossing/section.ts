// A train through a reversing section: which of its two ends the train's metal bridges, and whether the poles agree there.

/** What turns the section's two rails over. `switch` stays as somebody left it; `automatic` suits the one end that is bridged. */
export type TurningDevice = 'none' | 'switch' | 'automatic';
export type SectionEnd = 'entry' | 'exit';

export interface SectionRun {
  /** From the gaps of the entry to those of the exit, metres, > 0. */
  readonly length: number;
  /** From the first to the last wheel of the train that is metal or picks up current, metres, > 0. */
  readonly metal: number;
  /** Where the first of them is, metres beyond the entry; below 0: before it. */
  readonly front: number;
  readonly device: TurningDevice;
  /** The end that a switch suits. */
  readonly thrownFor: SectionEnd;
}

export interface SectionFound {
  readonly place: 'before' | 'entering' | 'inside' | 'leaving' | 'both' | 'beyond';
  readonly bridged: Readonly<Record<SectionEnd, boolean>>;
  /** The end where the section's poles meet the same poles outside; at the other one they meet crosswise. */
  readonly suits: SectionEnd;
  /** A bridged end where the poles meet crosswise. */
  readonly shortAt: SectionEnd | undefined;
}

/**
 * The section's rails meet the track outside with the same poles at one end and crosswise at the other, however it is set: the way back
 * is the same track. So metal across both ends is a short whatever the device does. Without a device the section suits its entry.
 * Source: own-derivation.
 */
export function throughSection({ length, metal, front, device, thrownFor }: SectionRun): SectionFound {
  const rear = front - metal;
  const bridged = { entry: rear < 0 && front > 0, exit: rear < length && front > length };
  const suits = suitedBy(device, thrownFor, bridged, rear >= length);
  const wrong = suits === 'entry' ? 'exit' : 'entry';
  return { place: placeOf(bridged, rear, front, length), bridged, suits, shortAt: bridged[wrong] ? wrong : undefined };
}

function suitedBy(
  device: TurningDevice,
  thrownFor: SectionEnd,
  bridged: SectionFound['bridged'],
  gone: boolean,
): SectionEnd {
  if (device === 'switch') return thrownFor;
  return device === 'automatic' && !bridged.entry && (bridged.exit || gone) ? 'exit' : 'entry';
}

function placeOf({ entry, exit }: SectionFound['bridged'], rear: number, front: number, length: number) {
  if (entry && exit) return 'both';
  if (entry) return 'entering';
  if (exit) return 'leaving';
  if (front <= 0) return 'before';
  return rear >= length ? 'beyond' : 'inside';
}
