// What is left as it is: the sentences of errors, which only who writes code sees, and in a sample all that was not drawn.

/** @type {readonly object[] | undefined} the places that were drawn; none: everything is tried */
let drawn;

/** Tries only what stands just at these places (lines from 1, columns from 0; of whichever file); undefined: everything. */
export function tryOnly(places) {
  drawn = places;
}

const before = (a, b) => a.line < b.line || (a.line === b.line && a.column <= b.column);
const holds = (outer, inner) => before(outer.start, inner.start) && before(inner.end, outer.end);

const isErrorText = ({ node, parent }) =>
  parent?.type === 'NewExpression' && node !== parent.callee && parent.callee.name?.endsWith('Error') === true;

const isUndrawn = ({ node }) => drawn !== undefined && node.loc && !drawn.some((place) => holds(node.loc, place));

export const strykerPlugins = [
  {
    kind: 'Ignore',
    name: 'left-as-it-is',
    value: {
      shouldIgnore(path) {
        if (isErrorText(path)) return 'the sentence of an error';
        return isUndrawn(path) ? 'not drawn' : undefined;
      },
    },
  },
];
