// Terms of the glossary in a text: each opens in place where it stands first, and nowhere that would disturb.
import { describe, expect, test } from 'vitest';
import { formsOf, withTerms } from '../../src/components/lesson-text/index.ts';
import { texts, wordsOf } from './folder.ts';

const TERMS = [
  { id: 'gap', forms: ['gap', 'gaps'] },
  { id: 'frog', forms: ['frog', 'frogs'] },
  { id: 'live-frog', forms: ['live frog', 'live frogs'] },
  { id: 'dc', forms: ['d.c.'] },
  { id: 'lift', forms: [] },
];

const opened = (html: string): string[] =>
  [...withTerms(html, TERMS).html.matchAll(/popovertarget="term-([a-z-]+)">([^<]*)</g)].map(
    ([, id, said]) => `${id}: ${said}`,
  );

describe('A term in a text', () => {
  test('opens where it stands first, and not again', () => {
    expect(opened('<p>Gaps are cut. A gap is narrow.</p><p>Fill the gap.</p>')).toEqual(['gap: Gaps']);
  });

  test('opens in a list and in bold', () => {
    expect(opened('<ul><li><strong>One gap.</strong></li></ul>')).toEqual(['gap: gap']);
  });

  test('is the longer one where one holds the other', () => {
    expect(opened('<p>A live frog, and then a frog.</p>')).toEqual(['live-frog: live frog', 'frog: frog']);
  });

  test('with dots in it is that term only', () => {
    expect(opened('<p>Plain d.c. flows, and dxcx does not.</p>')).toEqual(['dc: d.c.']);
  });

  test('is a word of its own', () => {
    expect(opened('<p>A gapped rail, a stop-gap, a frogman.</p>')).toEqual([]);
  });

  test('stays closed in headings, links, buttons, drawings and cautions', () => {
    const html =
      '<h2>The gap</h2><p><a href="x">a gap</a></p><figure>gap</figure><div class="caution life"><p>gap</p></div><p>The gap.</p>';
    expect(withTerms(html, TERMS).html).toBe(
      html.replace(
        '<p>The gap.</p>',
        '<p>The <span class="kept"><button type="button" class="term" popovertarget="term-gap">gap</button>.</span></p>',
      ),
    );
  });

  test('keeps the mark that follows it on its line', () => {
    expect(withTerms('<p>A gap, or none.</p>', TERMS).html).toBe(
      '<p>A <span class="kept"><button type="button" class="term" popovertarget="term-gap">gap</button>,</span> or none.</p>',
    );
    expect(withTerms('<p>A gap is open.</p>', TERMS).html).not.toContain('kept');
  });

  test('whose word means more than the term never opens', () => {
    expect(opened('<p>Lift the locomotive.</p>')).toEqual([]);
  });

  test('leaves all else of the page as it was', () => {
    const html =
      '<p class="a">1 &lt; 2 &amp; <b>x</b></p>\n<svg viewBox="0 0 1 1"><path d="M0 0h1"></path></svg><br><hr>';
    expect(withTerms(html, TERMS)).toEqual({ html, used: [] });
  });
});

describe('The glossary', () => {
  const forms = wordsOf('en', 'glossary').flatMap(({ id, data }) =>
    formsOf({
      term: String(data['term']),
      forms: data['forms'] === undefined ? undefined : texts(data['forms']),
    }).map((form) => [form.toLowerCase(), id] as const),
  );

  test('says of each word which one term it is', () => {
    const said = forms.map(([form]) => form);
    expect(said.filter((form, i) => said.indexOf(form) !== i)).toEqual([]);
  });

  test.each(wordsOf('en', 'lessons').map(({ id, body }) => [id, body] as const))(
    'opens terms in the lesson %s, each once',
    (_, body) => {
      const html = body
        .split('\n')
        .map((line) => (/^[#<]/.test(line) ? '' : `<p>${line}</p>`))
        .join('\n');
      const all = [...new Map(forms.map(([, id]) => [id, forms.flatMap(([form, of]) => (of === id ? [form] : []))]))];
      const { used } = withTerms(
        html,
        all.map(([id, own]) => ({ id, forms: own })),
      );
      expect(used.length).toBeGreaterThan(2);
      expect(new Set(used).size).toBe(used.length);
    },
  );
});
