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
