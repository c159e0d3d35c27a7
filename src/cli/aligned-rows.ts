/** Rows under headings in columns for the eye: words left, numbers right, a dash for what is not known. */
export type Line = Readonly<Record<string, string | number | null>>;

function shown(value: string | number | null | undefined): string {
  if (value === null || value === undefined) return '–';
  return typeof value === 'string' || Number.isInteger(value) ? String(value) : value.toFixed(4);
}

/** Ends with a line end. A reason, `why`, comes last and only where some row has one. */
export function alignedRows(lines: readonly Line[]): string {
  const names = [...new Set(lines.flatMap((line) => Object.keys(line)))];
  const headings = [...names.filter((name) => name !== 'why'), ...names.filter((name) => name === 'why')];
  const cells = lines.map((line) =>
    headings.map((name) => (name === 'why' ? String(line[name] ?? '') : shown(line[name]))),
  );
  const columns = headings.map((name, at) => {
    const words = lines.some((line) => typeof line[name] === 'string');
    return { words, width: Math.max(name.length, ...cells.map((row) => row[at].length)) };
  });
  return [headings, ...cells]
    .map((row) =>
      row
        .map((cell, at) =>
          columns[at].words ? cell.padEnd(columns[at].width) : cell.padStart(columns[at].width),
        )
        .join('  ')
        .trimEnd(),
    )
    .map((row) => `${row}\n`)
    .join('');
}
