import type { Problem } from "./problem.ts";

export interface CsvRow {
  /** Line of the file on which the row starts, from 1. */
  line: number;
  cells: Record<string, string>;
}

export interface CsvTable {
  rows: CsvRow[];
  problems: Problem[];
}

export interface CsvColumns {
  needed: readonly string[];
  allowed: readonly string[];
}

/**
 * Rows of a CSV text (RFC 4180: commas, double quotes, CRLF or LF) under its head line. Read strictly: an open quote,
 * text after a quote, a ragged row, an unknown, missing or repeated column is a problem. Cells are cut of spaces at both
 * ends. Empty lines are passed over. A byte order mark at the start is skipped.
 */
export function csvTable(text: string, file: string, columns: CsvColumns): CsvTable {
  const problems: Problem[] = [];
  const source = text.startsWith("\ufeff") ? text.slice(1) : text;
  const records = splitRecords(source, file, problems).filter(({ cells }) =>
    cells.some((cell) => cell !== ""),
  );
  const head = records[0];
  if (!head) {
    if (problems.length === 0) problems.push(emptyFile(file, columns));
    return { rows: [], problems };
  }
  problems.push(...headProblems(head.cells, head.line, file, columns));
  const rows: CsvRow[] = [];
  for (const { cells, line } of records.slice(1)) {
    if (cells.length !== head.cells.length) {
      problems.push({
        code: "csv-ragged",
        file,
        field: `line ${line}`,
        found: `${cells.length} cells`,
        expected: `${head.cells.length} cells, as in the head of the table`,
        fix:
          cells.length > head.cells.length
            ? "put a cell with a comma into double quotes"
            : "add the missing commas",
      });
      continue;
    }
    rows.push({ line, cells: Object.fromEntries(head.cells.map((name, i) => [name, cells[i]!])) });
  }
  return { rows, problems };
}

interface CsvRecord {
  line: number;
  cells: string[];
}

function splitRecords(source: string, file: string, problems: Problem[]): CsvRecord[] {
  const records: CsvRecord[] = [];
  let line = 1;
  let at = 0;
  while (at < source.length) {
    const record: CsvRecord = { line, cells: [] };
    for (;;) {
      const cell = source[at] === '"' ? quotedCell(source, at) : plainCell(source, at);
      if ("fault" in cell) {
        const fix = 'a cell with a quote stands in double quotes, the quote in it twice: "6"" bolt"';
        const expected = "cells in double quotes from end to end, or without any";
        problems.push({ code: "csv-broken", file, field: `line ${line}`, found: cell.fault, expected, fix });
        return records;
      }
      record.cells.push(cell.text.trim());
      line += cell.text.split("\n").length - 1;
      at = cell.end;
      if (source[at] !== ",") break;
      at++;
    }
    records.push(record);
    at += source.startsWith("\r\n", at) ? 2 : 1;
    line++;
  }
  return records;
}

type Cell = { text: string; end: number } | { fault: string };

function plainCell(source: string, start: number): Cell {
  const pattern = /[^,\r\n"]*/y;
  pattern.lastIndex = start;
  const text = pattern.exec(source)![0];
  const end = start + text.length;
  return source[end] === '"' ? { fault: `a quote after ${JSON.stringify(text.slice(-20))}` } : { text, end };
}

function quotedCell(source: string, start: number): Cell {
  let close = source.indexOf('"', start + 1);
  while (close !== -1 && source[close + 1] === '"') close = source.indexOf('"', close + 2);
  if (close === -1) return { fault: "a quote that is never closed" };
  const end = close + 1;
  if (end < source.length && !/[,\r\n]/.test(source[end]!)) {
    return { fault: `${JSON.stringify(source.slice(end, end + 20).split("\n")[0])} after a closed quote` };
  }
  return { text: source.slice(start + 1, close).replaceAll('""', '"'), end };
}

function headProblems(names: readonly string[], line: number, file: string, columns: CsvColumns): Problem[] {
  const { needed, allowed } = columns;
  const at = { code: "csv-columns" as const, file, field: `line ${line}` };
  const expected = `the columns ${allowed.join(", ")}`;
  const problems: Problem[] = [];
  for (const name of new Set(names)) {
    if (names.filter((other) => other === name).length > 1) {
      problems.push({
        ...at,
        found: `the column ${JSON.stringify(name)} twice`,
        expected,
        fix: "delete one of the two columns",
      });
    }
    if (!allowed.includes(name)) {
      const found = name === "" ? "a column without a name" : `the column ${JSON.stringify(name)}`;
      problems.push({
        ...at,
        found,
        expected,
        fix: "name the column as expected, capitals included, or delete it",
      });
    }
  }
  for (const name of needed.filter((column) => !names.includes(column))) {
    problems.push({ ...at, found: `no column ${name}`, expected, fix: `add the column ${name}` });
  }
  return problems;
}

function emptyFile(file: string, columns: CsvColumns): Problem {
  return {
    code: "file-empty",
    file,
    field: "",
    found: "an empty file",
    expected: `a first line with the columns ${columns.needed.join(", ")}`,
    fix: "write the head of the table, or delete the file",
  };
}
