import { tsImport } from "tsx/esm/api";

// A fresh import at each reset: Node keeps modules, and an edit of a script would not be seen.
export default async function (eleventyConfig) {
  const { configureEleventy } = await tsImport("./scripts/publish/configureEleventy.ts", import.meta.url);
  await configureEleventy(eleventyConfig);
}
