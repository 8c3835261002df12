// npm run map: the flow of every wizard as Mermaid text, read off its statechart.
import { assertNode } from './machine.mjs';

assertNode();

const { CHARTS, mermaidOf } = await import('../src/wizards/index.ts');

for (const chart of CHARTS) console.log(`\n%% ${chart.id}\n${mermaidOf(chart)}`);
