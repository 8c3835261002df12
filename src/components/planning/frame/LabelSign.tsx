// What to look for on a label: the signs for the two kinds of current, and for the poles of a round plug.

const PICTURES = {
  dc: <path d="M3 9h34M3 16h7M16.5 16h7M30 16h7" />,
  ac: <path d="M4 12c4-9 12-9 16 0s12 9 16 0" />,
  'centre-plus': <Plug inner="plus" />,
  'centre-minus': <Plug inner="minus" />,
} as const;

/** The sign that goes with an option of a label question; nothing for all other options. */
export function LabelSign({ option }: { option: string }) {
  if (!isPictured(option)) return null;
  return (
    <svg class="label-sign" viewBox={option === 'dc' || option === 'ac' ? '0 0 40 24' : '0 0 72 24'} aria-hidden="true">
      {PICTURES[option]}
    </svg>
  );
}

function isPictured(option: string): option is keyof typeof PICTURES {
  return Object.hasOwn(PICTURES, option);
}

// Left the sign of the outer ring, right that of the dot in the middle.
function Plug({ inner }: { inner: 'plus' | 'minus' }) {
  const minus = 'M0 12h10';
  const plus = 'M0 12h10M5 7v10';
  return (
    <>
      <path d="M47 12a11 11 0 1 0-5.5 9.5M11 12h14M36 12h22" />
      <circle class="dot" cx="36" cy="12" r="4" />
      <path d={inner === 'plus' ? minus : plus} />
      <path transform="translate(61 0)" d={inner === 'plus' ? plus : minus} />
    </>
  );
}
