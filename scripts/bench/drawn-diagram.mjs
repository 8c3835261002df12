// What the bench of the diagram runs in the page: draws a sheet, and says how long it took until it was laid out.
import { h, render } from 'preact';
import { Diagram } from '../../src/components/diagram/index.ts';
import { Numbers, sayer } from '../../src/components/words/index.ts';

const say = sayer({}, 'en');
const numbers = new Numbers('en');
// Any page with numbers has made what writes them.
numbers.amps(1);

window.drawDiagram = (sheet, onSelect = () => undefined) => {
  const begun = performance.now();
  render(h(Diagram, { sheet, say, numbers, language: 'en', onSelect }), document.body);
  document.body.getBoundingClientRect();
  return performance.now() - begun;
};
