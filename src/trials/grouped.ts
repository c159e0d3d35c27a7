/** Rows by a word of theirs, in the order in which the words first come. (Node 20 has no Map.groupBy.) */
export function grouped<Row>(rows: readonly Row[], word: (row: Row) => string): Map<string, Row[]> {
  const groups = new Map<string, Row[]>();
  for (const row of rows) {
    const own = groups.get(word(row));
    if (own === undefined) groups.set(word(row), [row]);
    else own.push(row);
  }
  return groups;
}
