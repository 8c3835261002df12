// Going through a table by keyboard, as in a spreadsheet: up and down, left and right at the end of a text, Enter downwards.

const FIELDS = 'input:not([type="checkbox"]), select, summary, button';

/** @param add gives one row more, for Enter in the last */
export function byKeys(event: KeyboardEvent, add: () => void): void {
  const { target } = event;
  if (event.ctrlKey || event.metaKey || event.altKey || !(target instanceof HTMLElement)) return;
  const cell = target.closest('td');
  if (cell === null || target.closest('fieldset') !== null) return;
  if (target instanceof HTMLInputElement) upAndDown(event, target, cell, add);
  const { key } = event;
  if ((key === 'ArrowLeft' || key === 'ArrowRight') && isAtEnd(target, key)) {
    goTo(event, key === 'ArrowLeft' ? cell.previousElementSibling : cell.nextElementSibling);
  }
}

function upAndDown(event: KeyboardEvent, target: HTMLInputElement, cell: HTMLTableCellElement, add: () => void): void {
  const row = cell.closest('tr');
  const above = () => fieldIn(row?.previousElementSibling, cell.cellIndex);
  const below = () => fieldIn(row?.nextElementSibling, cell.cellIndex);
  if (event.key === 'ArrowUp') goTo(event, above());
  if (event.key === 'ArrowDown') goTo(event, below());
  if (event.key !== 'Enter') return;
  // Leaving the field takes what was typed.
  target.blur();
  if (below() === undefined) add();
  event.preventDefault();
  requestAnimationFrame(() => requestAnimationFrame(() => goTo(event, below() ?? cell)));
}

/** In a text the arrows go through the text first, unless all of it is marked. */
function isAtEnd(target: HTMLElement, key: 'ArrowLeft' | 'ArrowRight'): boolean {
  if (!(target instanceof HTMLInputElement)) return true;
  const { selectionStart: from, selectionEnd: to, value } = target;
  const isWhole = from === 0 && to === value.length;
  return isWhole || (key === 'ArrowLeft' ? to === 0 : from === value.length);
}

const fieldIn = (row: Element | null | undefined, place: number): Element | undefined =>
  row instanceof HTMLTableRowElement ? row.cells[place] : undefined;

/** Goes into a cell, if there is one. */
function goTo(event: KeyboardEvent, cell: Element | null | undefined): void {
  const field = cell?.querySelector<HTMLElement>(FIELDS);
  if (field === null || field === undefined) return;
  event.preventDefault();
  field.focus();
  if (field instanceof HTMLInputElement) field.select();
}
