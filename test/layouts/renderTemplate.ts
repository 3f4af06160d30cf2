import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { nunjucksEnvironment } from "../../scripts/publish/nunjucksEnvironment.ts";

const layouts = fileURLToPath(new URL("../../layouts", import.meta.url));
const environment = nunjucksEnvironment(layouts);

/** Page of a template of layouts/pages for one sheet, rendered as the pack renders it. */
export function renderPage(template: string, sheet: object): string {
  const source = readFileSync(`${layouts}/pages/${template}.njk`, "utf8").replace(
    /^---\n[\s\S]*?\n---\n/,
    "",
  );
  return environment.renderString(source, { sheet });
}

/** What a macro of a component gives for its parameters. */
export function renderComponent(name: string, macro: string, params: unknown): string {
  return environment.renderString(
    `{% from "components/${name}/${name}.njk" import ${macro} %}{{ ${macro}(params) }}`,
    { params },
  );
}
