// A district by the colour and pattern of its track, and by its name.
import type { ComponentChildren } from 'preact';
import { hasPattern, lookOf } from './look.ts';

/** @param place among the districts */
export function DistrictTag({ place, children }: { readonly place: number; readonly children: ComponentChildren }) {
  const look = lookOf(place);
  return (
    <span class={`district-tag ${look}`}>
      <svg width="64" height="18" viewBox="0 0 64 18" aria-hidden="true">
        <line class="track" x1="0" x2="64" y1="9" y2="9" />
        {hasPattern(look) && <line class="pattern" x1="0" x2="64" y1="9" y2="9" />}
      </svg>
      {children}
    </span>
  );
}
