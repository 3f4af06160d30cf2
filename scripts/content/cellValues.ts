const NUMBER = /^-?\d+(\.\d+)?$/;

/** The number a cell holds, null when it is empty; any other text is given back for the schema to refuse. */
export function numberCell(cell: string | undefined): number | string | null {
  if (cell === undefined || cell === "") return null;
  return NUMBER.test(cell) ? Number(cell) : cell;
}

/** true or false, null when the cell is empty; any other text is given back for the schema to refuse. */
export function booleanCell(cell: string | undefined): boolean | string | null {
  if (cell === undefined || cell === "") return null;
  if (cell === "true" || cell === "false") return cell === "true";
  return cell;
}

/** The entries whose cell holds something, for fields that are left out rather than null. */
export function filledCells(cells: Record<string, string>, names: readonly string[]): Record<string, string> {
  return Object.fromEntries(
    names.filter((name) => (cells[name] ?? "") !== "").map((name) => [name, cells[name]!]),
  );
}
