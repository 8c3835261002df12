// npm run map: the graph of each wizard as a table, state by state.
import { assertNode } from './machine.mjs';

assertNode();

const { enoughCurrent } = await import('../src/wizards/enough-current/flow.ts');
const { whichSupplyWhere } = await import('../src/wizards/which-supply-where/flow.ts');

for (const machine of [enoughCurrent, whichSupplyWhere]) {
  console.log(`\n${machine.id}`);
  for (const [name, state] of Object.entries(machine.states)) {
    if (state.type === 'final') {
      console.log(`  ${name.padEnd(26)} (end)`);
      continue;
    }
    const ways = [...state.transitions.values()].flat().map(({ guard, target }) => {
      const to = target?.[0]?.key ?? '?';
      return guard === undefined ? to : `${to} if ${typeof guard === 'string' ? guard : guard.type}`;
    });
    console.log(`  ${name.padEnd(26)} → ${ways.join(', ')}`);
  }
}
