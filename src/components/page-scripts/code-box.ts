// A link as a square code, with the link below it, for a page without a component for it.
import { loadCode } from '../link/index.ts';

const SVG = 'http://www.w3.org/2000/svg';

/** Rejects where the part that draws codes cannot be had. */
export async function codeBox(link: string): Promise<HTMLElement> {
  const { whole, path: dark } = (await loadCode()).codeOf(link);
  const code = document.createElementNS(SVG, 'svg');
  const ground = document.createElementNS(SVG, 'rect');
  const modules = document.createElementNS(SVG, 'path');
  for (const [element, name, value] of [
    [code, 'class', 'qr'],
    [code, 'viewBox', `0 0 ${whole} ${whole}`],
    [code, 'role', 'img'],
    [code, 'aria-label', link],
    [ground, 'width', whole],
    [ground, 'height', whole],
    [ground, 'fill', '#fff'],
    [modules, 'd', dark],
    [modules, 'fill', '#000'],
    // A line round each module would join them.
    [modules, 'stroke', 'none'],
  ] as const)
    element.setAttribute(name, String(value));
  code.append(ground, modules);
  const text = document.createElement('a');
  text.href = link;
  text.textContent = link;
  const box = document.createElement('p');
  box.className = 'paper-link shown';
  box.append(code, text);
  return box;
}
