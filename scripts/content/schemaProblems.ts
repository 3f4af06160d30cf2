import type { z } from "zod";
import type { Loose } from "./loose.ts";
import { nearestWord } from "./nearestWord.ts";
import type { Problem } from "./problem.ts";
import type { ProblemCode } from "./problemCodes.ts";
import { discriminatorChoices, type FieldRule, schemaAt, valueAt } from "./schemaAt.ts";
import { suggestValue } from "./suggestValue.ts";

export interface Checked<T> {
  /** The whole file with defaults filled in, or null when anything in it is wrong. */
  facts: T | null;
  /** What could be read of it; null when the file is not even the right kind of value. */
  loose: Loose<T> | null;
  problems: Problem[];
}

type Issue = z.core.$ZodIssue;
type Path = readonly PropertyKey[];

/**
 * A value judged by the schema of its file kind: all problems at once, each with what was found and a line to write.
 *
 * @param fieldOf how a path is told, for files where a field is a cell of a table
 */
export function checkedBySchema<T extends z.ZodType>(
  schema: T,
  value: unknown,
  file: string,
  fieldOf: (path: Path) => string = dotted,
): Checked<z.infer<T>> {
  const result = schema.safeParse(value, { reportInput: true });
  if (result.success) return { facts: result.data, loose: result.data as Loose<z.infer<T>>, problems: [] };
  const issues = result.error.issues.flatMap(withoutUnions);
  const problems = issues.flatMap((issue) => problemsOf(issue, schema, value, file, fieldOf));
  return { facts: null, loose: withoutBadValues(value, issues) as Loose<z.infer<T>> | null, problems };
}

/** "walkIns.0.along"; the empty path is "". */
export function dotted(path: Path): string {
  return path.map(String).join(".");
}

/** A value as its author wrote it, cut to a line. */
export function asWritten(value: unknown): string {
  if (value === undefined) return "nothing";
  const text = JSON.stringify(value) ?? String(value);
  return text.length > 80 ? `${text.slice(0, 79)}…` : text;
}

/** A union that a value fails is told by the branch it came nearest to: the one whose own parts failed, not its type. */
function withoutUnions(issue: Issue): Issue[] {
  if (issue.code !== "invalid_union") return [issue];
  const inner = issue.errors.find((branch) => branch.some((part) => part.path.length > 0));
  const range = issue.errors.find((branch) => branch.every((part) => part.code !== "invalid_type"));
  if (!inner && !(range && typeof issue.input === "number")) return [issue];
  return (inner ?? range ?? []).flatMap((part) =>
    withoutUnions({ ...part, path: [...issue.path, ...part.path] } as Issue),
  );
}

function problemsOf(
  issue: Issue,
  schema: z.ZodType,
  root: unknown,
  file: string,
  fieldOf: (path: Path) => string,
): Problem[] {
  const { path } = issue;
  const rule = schemaAt(schema, path, root);
  const value = valueAt(root, path);
  const at = (code: ProblemCode, parts: { found?: string; expected?: string; fix: string }): Problem => ({
    code,
    file,
    field: fieldOf(path),
    found: parts.found ?? asWritten(value),
    expected: parts.expected ?? expectedOf(rule, issue),
    fix: parts.fix,
  });
  if (issue.code === "unrecognized_keys") {
    return issue.keys.map((key) => ({
      ...at("value-unknown-key", {
        found: `the key ${JSON.stringify(key)}`,
        expected: rule && rule.keys.length > 0 ? `one of the keys ${rule.keys.join(", ")}` : "no such key",
        fix: unknownKeyFix(key, rule),
      }),
      field: fieldOf([...path, key]),
    }));
  }
  if (issue.code === "invalid_key") {
    const key = schemaAt(schema, path, root);
    const meant =
      key &&
      suggestValue("id", String(path.at(-1)), { ...key, choices: [], type: "string", description: "an id" });
    return [
      at("value-form", {
        found: `the key ${JSON.stringify(String(path.at(-1)))}`,
        expected: "an id as key: small letters a to z, digits and single hyphens",
        fix: meant ? `write the key as ${JSON.stringify(meant)}` : "write an id",
      }),
    ];
  }
  if (issue.code === "custom") {
    return [at("value-rule", { found: asWritten(value), expected: issue.message, fix: issue.message })];
  }
  if (value === undefined) {
    return [at("value-missing", { fix: missingFix(path, rule) })];
  }
  const discriminators = discriminatorChoices(schema, path, root);
  if (issue.code === "invalid_union" && discriminators.length > 0) {
    const near = typeof value === "string" ? nearestWord(value, discriminators) : null;
    const expected = `one of ${discriminators.map((word) => JSON.stringify(word)).join(", ")}`;
    return [at("value-choice", { expected, fix: near ? line(path, near) : "write one of these words" })];
  }
  return [at(codeOf(issue, rule, value), { fix: valueFix(path, value, rule, root) })];
}

function codeOf(issue: Issue, rule: FieldRule | null, value: unknown): ProblemCode {
  const isWord =
    issue.code === "invalid_union" && typeof value === "string" && (rule?.choices.length ?? 0) > 0;
  if (issue.code === "invalid_value" || isWord) return "value-choice";
  if (issue.code === "invalid_format") return "value-form";
  if (issue.code === "too_big" || issue.code === "too_small" || issue.code === "not_multiple_of")
    return "value-range";
  return "value-type";
}

function expectedOf(rule: FieldRule | null, issue: Issue): string {
  if (rule === null) return issue.message;
  const words = rule.choices.map((word) => JSON.stringify(word)).join(", ");
  const base = rule.description ?? (words === "" ? (KINDS[rule.type] ?? rule.type) : `one of ${words}`);
  const told =
    words !== "" && rule.description && !rule.description.includes(words) ? `${base}: ${words}` : base;
  return rule.takesNull && !told.includes("null") ? `${told}; or null when not known` : told;
}

const KINDS: Readonly<Record<string, string>> = {
  object: "an object in braces {}",
  record: "an object in braces {}",
  array: "a list in brackets []",
  tuple: "a list of fixed length in brackets []",
  boolean: "true or false",
  string: "text in double quotes",
  number: "a number",
};

function unknownKeyFix(key: string, rule: FieldRule | null): string {
  const near = nearestWord(key, rule?.keys ?? []);
  if (near) return `did you mean ${JSON.stringify(near)}?`;
  return "delete the key; words of your own fit into the Markdown file beside it";
}

function missingFix(path: Path, rule: FieldRule | null): string {
  const name = path.at(-1);
  if (typeof name !== "string") return "write the missing entry";
  if (rule?.takesNull) return `add ${JSON.stringify(name)}: null if it is not known`;
  return `add ${JSON.stringify(name)}: and its value`;
}

function valueFix(path: Path, value: unknown, rule: FieldRule | null, root: unknown): string {
  const exchanged = exchangedFix(path, root);
  if (exchanged) return exchanged;
  if (rule) {
    const meant = suggestValue(nameOf(path), value, rule);
    if (meant !== null) return line(path, meant);
  }
  if (value === null || value === "") {
    return rule?.isOptional ? "delete the line if it is not known" : "write the value; it is needed";
  }
  if (rule?.takesNull) return "write the value as it was measured, or null if it is not known";
  return rule?.isOptional
    ? "write it as expected, or delete the line if it is not known"
    : "write it as expected";
}

/** Latitude out of range beside a longitude that would be one: the two were exchanged. */
function exchangedFix(path: Path, root: unknown): string | null {
  const parent = valueAt(root, path.slice(0, -1));
  if (path.at(-1) === "lat" && typeof parent === "object" && parent !== null) {
    const { lat, lon } = parent as { lat?: unknown; lon?: unknown };
    if (isWithin(lat, 180) && isWithin(lon, 90))
      return `lat and lon look exchanged: write { "lat": ${lon}, "lon": ${lat} }`;
  }
  if (path.at(-1) === 1 && Array.isArray(parent) && parent.length === 2) {
    const [first, second] = parent as unknown[];
    if (isWithin(first, 90) && isWithin(second, 180))
      return `longitude comes first: write [${second}, ${first}]`;
  }
  return null;
}

function isWithin(value: unknown, limit: number): value is number {
  return typeof value === "number" && Math.abs(value) <= limit;
}

function nameOf(path: Path): string {
  return String(path.findLast((step) => typeof step === "string") ?? "");
}

function line(path: Path, value: string | number): string {
  const name = path.at(-1);
  const written = JSON.stringify(value);
  return typeof name === "string" ? `write ${JSON.stringify(name)}: ${written}` : `write ${written}`;
}

/** Where a value stands that no rule has vouched for: a wrong discriminator leaves its whole object unjudged. */
function unjudgedPath(issue: Issue): Path {
  const isDiscriminator = issue.code === "invalid_union" && issue.errors.length === 0;
  return isDiscriminator ? issue.path.slice(0, -1) : issue.path;
}

function withoutBadValues(value: unknown, issues: readonly Issue[]): unknown {
  const copy = structuredClone(value);
  for (const issue of issues) {
    if (issue.code === "unrecognized_keys" || issue.code === "custom") continue;
    const path = unjudgedPath(issue);
    if (path.length === 0) return null;
    const parent = valueAt(copy, path.slice(0, -1));
    const name = path.at(-1)!;
    if (typeof parent === "object" && parent !== null && Object.hasOwn(parent, name)) {
      (parent as Record<PropertyKey, unknown>)[name] = undefined;
    }
  }
  return typeof copy === "object" ? copy : null;
}
