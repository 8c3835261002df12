// A square code as a picture, for a page without a component for it.
import type { codeOf } from '../code/index.ts';

const SVG = 'http://www.w3.org/2000/svg';

/** @param label what it says, for who cannot see it */
export function codePicture({ whole, path: dark }: ReturnType<typeof codeOf>, label: string): SVGElement {
  const code = document.createElementNS(SVG, 'svg');
  const ground = document.createElementNS(SVG, 'rect');
  const modules = document.createElementNS(SVG, 'path');
  for (const [element, name, value] of [
    [code, 'class', 'qr'],
    [code, 'viewBox', `0 0 ${whole} ${whole}`],
    [code, 'role', 'img'],
    [code, 'aria-label', label],
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
  return code;
}
