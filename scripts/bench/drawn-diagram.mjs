// What the bench of the diagram runs in the page: draws a sheet and lays it out; with districts alone, those in the sheet that is drawn.
import { h, render } from 'preact';
import { Diagram, layAhead } from '../../src/components/diagram/index.ts';
import { Numbers, sayer } from '../../src/components/words/index.ts';

const say = sayer({}, 'en');
const numbers = new Numbers('en');
// Any page with numbers has made what writes them.
numbers.amps(1);

let drawn = {};
let ahead;
/** Lays a sheet out as its page does before the drawing is due. */
window.layOutAhead = async (sheet) => {
  drawn = sheet;
  ahead = await layAhead(sheet);
};
window.drawDiagram = (given, onSelect = () => undefined) => {
  drawn = { ...drawn, ...given };
  render(h(Diagram, { sheet: drawn, ahead, say, numbers, language: 'en', onSelect }), document.body);
  document.body.getBoundingClientRect();
};
