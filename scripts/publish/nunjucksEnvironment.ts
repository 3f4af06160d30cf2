import nunjucks from "nunjucks";

/**
 * The environment in which every template of the pack is rendered: it escapes every value, and a name that does not exist
 * stops the build instead of printing nothing.
 *
 * @param layoutsFolder `extends`, `import` and `include` are found from here and nowhere else
 */
export function nunjucksEnvironment(layoutsFolder: string): nunjucks.Environment {
  return new nunjucks.Environment(new nunjucks.FileSystemLoader(layoutsFolder), {
    autoescape: true,
    throwOnUndefined: true,
  });
}

export type CompileTemplate = (text: string, path: string) => (data: object) => Promise<string>;

/**
 * Compiles templates, each text once: Eleventy asks anew for every page that one template is rendered for, and for its permalink.
 *
 * @param layoutsFolder as in {@link nunjucksEnvironment}
 */
export function templateCompiler(layoutsFolder: string): CompileTemplate {
  const environment = nunjucksEnvironment(layoutsFolder);
  const compiled = new Map<string, nunjucks.Template>();
  return (text, path) => {
    const key = `${path}\0${text}`;
    const template = compiled.get(key) ?? new nunjucks.Template(text, environment, path, true);
    compiled.set(key, template);
    return (data) => rendered(template, data);
  };
}

function rendered(template: nunjucks.Template, data: object): Promise<string> {
  return new Promise((resolve, reject) => {
    template.render(data, (error, html) => {
      if (error !== null) reject(error);
      else resolve(html ?? "");
    });
  });
}
