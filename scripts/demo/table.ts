/** Rows as text under their heads, numbers to the right. */
export function table(heads: readonly string[], rows: readonly (readonly (string | number)[])[]): string {
  const cells = rows.map((row) => row.map((cell) => (typeof cell === 'number' ? shown(cell) : cell)));
  const widths = heads.map((head, i) => Math.max(head.length, ...cells.map((row) => row[i]?.length ?? 0)));
  const isNumber = (i: number) => rows.length > 0 && rows.every((row) => typeof row[i] === 'number');
  const line = (row: readonly string[]) =>
    row
      .map((cell, i) => (isNumber(i) ? cell.padStart(widths[i]!) : cell.padEnd(widths[i]!)))
      .join('  ')
      .trimEnd();
  return [line(heads), line(widths.map((width) => '-'.repeat(width))), ...cells.map(line)].join('\n');
}

function shown(value: number): string {
  return value.toLocaleString('en', { maximumFractionDigits: 2 });
}
