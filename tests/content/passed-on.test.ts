// An answer as Markdown says what its plain text says, every danger at its step; nothing that it says turns into a mark.
import { describe, expect, test } from 'vitest';
import { markdown } from '../../src/components/link/markdown.ts';
import { partsOf, plainText } from '../../src/components/link/plain-text.ts';

const CAUTIONS = {
  mains: { rank: 'life', harm: 'Mains voltage kills.', do: 'Leave the unit shut.' },
  iron: { rank: 'injury', harm: 'A soldering iron burns.', do: 'Put it in its stand.' },
} as const;

const ANSWER = {
  headline: 'More than this supply can give',
  said: [['Tonight two can run.', 'Buy nothing yet.'], []],
  lead: 'Three trains want 2.1 A; the supply gives 2 A.',
  fix: {
    title: 'A larger supply',
    effort: 'half an hour',
    before: ['Stop all trains.'],
    steps: [
      { do: 'Pull the plug_of *the* supply.', cautions: ['mains'] },
      { do: 'Solder the leads.', cautions: ['iron'], job: { title: 'Soldering', href: '/en/fixes/lay/' } },
      { do: '2. Put it back <now>.', cautions: [] },
    ],
    verify: 'All three run.',
    next: 'Measure what they draw.',
  },
  cautions: CAUTIONS,
  facts: ['Modern locomotives: 0.2 to 0.5 A each.', '# of trains: 3'],
  say: (key: string): string => key,
  here: 'https://example.org/en/work-it-out/enough-current/',
};

const LINK = { name: 'Open this', address: 'https://example.org/en/a/?1AbC' };
const written = markdown(partsOf(ANSWER), LINK);

describe('An answer as Markdown', () => {
  test('has the verdict and the repair as headings, numbered steps, and the link at its end', () => {
    expect(written.split('\n')[0]).toBe('## More than this supply can give');
    expect(written).toContain('\n### A larger supply (half an hour)\n');
    expect(written.match(/^\d+\. .*/gm)).toEqual([
      '1. Pull the plug\\_of \\*the\\* supply.',
      '2. Solder the leads.',
      '3. 2\\. Put it back \\<now\\>.',
    ]);
    expect(written.trimEnd().endsWith('[Open this](https://example.org/en/a/?1AbC)')).toBe(true);
  });

  test('has every danger below its step', () => {
    const lines = written.split('\n');
    expect(lines[lines.findIndex((line) => line.startsWith('1. ')) + 1]).toBe(
      '   - **rank-life** Mains voltage kills. Leave the unit shut.',
    );
    expect(lines[lines.findIndex((line) => line.startsWith('2. ')) + 2]).toBe(
      '   - **rank-injury** A soldering iron burns. Put it in its stand.',
    );
    expect(written).toContain('[Soldering](https://example.org/en/fixes/lay/)');
  });

  test('says no more and no less than the plain text', () => {
    const words = (text: string): string[] => text.match(/[\p{L}\d]+/gu) ?? [];
    const plain = words(plainText(ANSWER)).sort();
    const marked = words(written.slice(0, written.lastIndexOf('['))).sort();
    expect(marked).toEqual(plain);
  });
});

test('A walk’s card as Markdown is a heading and a list', () => {
  expect(markdown(['Everything shuts down', 'Told: nothing [yet]', 'Still possible: dirt'], LINK)).toBe(
    '## Everything shuts down\n\n- Told: nothing \\[yet\\]\n- Still possible: dirt\n\n[Open this](https://example.org/en/a/?1AbC)\n',
  );
});
