/** One wrong thing in an owner's files, in words its author can act on. `code` is permanent and listed in problemCodes.ts. */
export interface Problem {
  code: string;
  /** path from the folder the command was started in */
  file: string;
  /** dotted path of the field, "" for the whole file; line numbers as "line 12" */
  field: string;
  found: string;
  expected: string;
  fix: string;
}
