// The flow of every wizard, as the contributors' page and `npm run map` show it.
import { describe, expect, test } from 'vitest';
import { CHARTS, mermaidOf, questionsOf, WIZARD_IDS } from '../../src/wizards/index.ts';

test('there is a chart for each planning wizard and for putting it right', () => {
  expect(CHARTS.map(({ id }) => id)).toEqual([...WIZARD_IDS, 'put-it-right']);
});

describe.each(CHARTS)('the chart of $id', (chart) => {
  const lines = mermaidOf(chart).split('\n  ');
  const arrows = lines.filter((line) => line.includes(' --> '));

  test('is a Mermaid diagram of states, line by line', () => {
    const [head, ...rest] = lines;
    expect(head).toBe('stateDiagram-v2');
    for (const line of rest)
      expect(line).toMatch(
        /^(state "[a-z-]+" as [a-z_]+|(\[\*\]|[a-z_]+) --> (\[\*\]|[a-z_]+)(: [a-z-]*( ?\[[a-zA-Z]+\])?)?)$/,
      );
  });

  test('draws every way once, the way in, and the ways out', () => {
    const ways = chart.states.flatMap((state) => state.ways);
    const ends = chart.states.filter((state) => state.ways.length === 0);
    expect(arrows).toHaveLength(1 + ways.length + ends.length);
    expect(new Set(arrows).size).toBe(arrows.length);
    for (const { id, ways: own } of chart.states)
      for (const { to } of own)
        expect(arrows.join('\n')).toContain(`${id.replaceAll('-', '_')} --> ${to.replaceAll('-', '_')}`);
  });

  test('leads from its first state to every other', () => {
    const led = new Set(chart.states.flatMap((state) => state.ways.map(({ to }) => to)));
    expect(chart.states[0]?.id).toBe(chart.first);
    for (const { id } of chart.states.slice(1)) expect(led).toContain(id);
  });
});

test.each(WIZARD_IDS)(
  'the questions of %s are the states of its chart that can be answered, in their order',
  (wizard) => {
    const chart = CHARTS.find(({ id }) => id === wizard);
    const asked = chart?.states.filter(({ ways }) => ways.some(({ on }) => on !== 'user.ask')).map(({ id }) => id);
    expect(questionsOf(wizard)).toEqual(asked);
  },
);
