// The words of a text, as the search and the lists that are filtered take them.

/** Small words that say nothing of what is looked for, English, German, French, Dutch. */
export const SMALL: ReadonlySet<string> = new Set(
  [
    'a an the i my me we our you your it its is are was were be been has have had do does did of to at in on into by and or so as if then that this these those there with for from just very any also get gets got but he she they them their what why how when where which can could should would will may need want know about please help s t',
    'der die das den dem des ein eine einen einem einer ich mein meine meinem meiner wir es ist sind war von zu zum zur im am auf in und oder so wenn dann mit fur nur auch immer sehr bei beim sich er sie was wie warum wo wann welche welcher welches kann muss man',
    'le la les l un une des du de d je j mon ma mes nous il elle est sont a au aux en et ou si quand alors avec pour sur qui que qu se c cette ca y quoi comment pourquoi quel quelle quels quelles faut dois peut on m n',
    'het een ik mijn we is zijn was van te in op en of als dan met voor uit ook erg bij zich er dat die de wat hoe waarom waar wanneer welke kan moet je',
  ].flatMap((words) => words.split(' ')),
);

/** Words of a text: small letters without accents; "n't" is a word of its own, "a.c." is one, "CV29" are two. */
export function wordsOf(text: string): string[] {
  const plain = text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase().replaceAll('ß', 'ss').replaceAll('œ', 'oe');
  return (
    plain
      .replace(/n[’']t\b/g, ' not')
      .replace(/\b([ad])\.c\.?/g, '$1c')
      .replace(/\bcv(?=\d)/g, 'cv ')
      .match(/[\p{L}\p{N}]+/gu) ?? []
  );
}
