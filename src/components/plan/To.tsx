// The way to another place of the plan. The address holds the sheet, so that it stays as it is.
import type { ComponentChildren } from 'preact';

interface Props {
  /** The id of the place. */
  readonly to: string;
  readonly children: ComponentChildren;
}

export function To({ to, children }: Props) {
  const go = (event: Event): void => {
    const place = document.getElementById(to);
    if (place === null) return;
    event.preventDefault();
    const folded = place.closest('details');
    if (folded !== null) folded.open = true;
    place.scrollIntoView();
    place.focus({ preventScroll: true });
  };
  return (
    <a href={`#${to}`} onClick={go}>
      {children}
    </a>
  );
}
