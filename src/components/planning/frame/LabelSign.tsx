// What to look for on a label: the signs for the two kinds of current, and for the poles of a round plug.

import type { Say } from '../../words/index.ts';

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

/** A supply's label: the line that counts is framed, the one for the wall socket is crossed out. */
export function LabelPicture({ say }: { readonly say: Say }) {
  return (
    <svg class="label-picture" viewBox="0 0 300 112" role="img" aria-label={say('label-picture')}>
      <rect class="paper" x="2" y="2" width="296" height="108" rx="6" />
      <text class="away" x="16" y="31">
        {say('label-input')} 230 V~ 50 Hz
      </text>
      <path class="away" d="M12 26H236" />
      <rect class="look" x="9" y="42" width="228" height="30" rx="4" />
      <text x="16" y="63">
        {say('label-output')} 15 V
      </text>
      <path class="sign" d="M143 54h22M143 60h5M151.500 60h5M160 60h5" />
      <text x="174" y="63">
        2 A
      </text>
      <path class="sign" d="M16 92h9M35 92h20M68 92h14M87 92h9M91.500 87.500v9" />
      <path class="sign" d="M64 99a11 11 0 1 1 0-14" />
      <circle class="dot" cx="57" cy="92" r="4" />
    </svg>
  );
}
