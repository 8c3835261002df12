// A link as a square code, with the link below it, for a page without a component for it.
import { codePicture } from './code-picture.ts';

/** @param on `paper` where it is not to be seen on the screen. Rejects where the part that draws codes cannot be had. */
export async function codeBox(link: string, on: 'screen' | 'paper' = 'screen'): Promise<HTMLElement> {
  const { codeOf } = await import('../code/index.ts');
  const text = document.createElement('a');
  text.href = link;
  text.textContent = link;
  const box = document.createElement('p');
  box.className = on === 'screen' ? 'paper-link shown' : 'paper-link';
  box.append(codePicture(codeOf(link), link), text);
  return box;
}
