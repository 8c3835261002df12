// A table as a file that spreadsheets open: RFC 4180, with the mark that says it is UTF-8.

/** Spreadsheets that write a decimal comma part columns by semicolons. */
export const columnSign = (language: string): ';' | ',' =>
  new Intl.NumberFormat(language).formatToParts(1.5).some(({ type, value }) => type === 'decimal' && value === ',')
    ? ';'
    : ',';

/** With these a spreadsheet begins to reckon, or calls a programme, instead of showing a text. */
const RECKONS = /^[=+\-@\t\r|]/;

function cell(text: string): string {
  const shown = RECKONS.test(text.trimStart()) ? `'${text}` : text;
  return `"${shown.replaceAll('"', '""')}"`;
}

/** Every row in a line of its own, every cell in quotation marks. */
export const csvOf = (rows: readonly (readonly string[])[], language: string): string =>
  `\uFEFF${rows.map((row) => row.map(cell).join(columnSign(language))).join('\r\n')}\r\n`;
