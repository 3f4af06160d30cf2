import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Page } from "../browser.ts";

const SOURCE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

/** `target-size` runs only when wcag22aa is asked for. */
export const AXE_TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];

interface AxeRule {
  id: string;
  help: string;
  nodes: { target: string[]; html: string }[];
}

/**
 * What axe-core finds wrong with the page as it stands, and what it could not decide.
 *
 * @param rules only these rules; null for all of the tags
 */
export async function axeFaults(
  page: Page,
  rules: readonly string[] | null = null,
): Promise<{ faults: string[]; undecided: string[] }> {
  if (!(await page.evaluate("typeof axe === 'object'"))) await page.evaluate(SOURCE);
  const runOnly = rules === null ? { type: "tag", values: AXE_TAGS } : { type: "rule", values: rules };
  const options = { runOnly, resultTypes: ["violations", "incomplete"] };
  const found = (await page.evaluate(`axe.run(document, ${JSON.stringify(options)}).then(
    ({ violations, incomplete }) => ({ violations, incomplete }))`)) as {
    violations: AxeRule[];
    incomplete: AxeRule[];
  };
  return { faults: found.violations.flatMap(told), undecided: found.incomplete.flatMap(told) };
}

function told({ id, help, nodes }: AxeRule): string[] {
  const first = nodes[0];
  const more = nodes.length > 1 ? ` and ${nodes.length - 1} more` : "";
  return [`${id}, ${help}: ${first?.target.join(" ") ?? ""}${more}`];
}
