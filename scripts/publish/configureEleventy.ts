import { join } from "node:path";
import type { EleventyConfig } from "./eleventyConfig.ts";
import { templateCompiler } from "./nunjucksEnvironment.ts";
import type { Pages } from "./pages.ts";
import { previewPages } from "./previewPages.ts";
import { projectFolders } from "./projectFolders.ts";

export interface EleventySettings {
  layoutsFolder: string;
  pages: () => Pages;
}

const POLICY = /<meta\s+http-equiv="Content-Security-Policy"[^>]*>/i;

/**
 * Sets Eleventy up to render the templates of layouts/pages over finished pages, and nothing else: only .njk files, no data
 * files that run code, no list of ignored files, no content. Each template takes one kind of `pages` by pagination.
 *
 * @param settings given by the pack command. Without them Eleventy was started by itself (preview): the pages are then
 *                 computed from the content at every change, and written to the preview folder, never to a pack
 */
export async function configureEleventy(
  eleventyConfig: EleventyConfig,
  settings: EleventySettings | null = null,
): Promise<void> {
  eleventyConfig.setTemplateFormats(["njk"]);
  eleventyConfig.setDataFileSuffixes([]);
  eleventyConfig.setUseGitIgnore(false);
  const compile = templateCompiler(settings?.layoutsFolder ?? projectFolders.layouts);
  eleventyConfig.addExtension("njk", {
    compile: async (text, path) => compile(text, path),
    compileOptions: { permalink: async (text, path) => compile(text, path) },
  });
  if (settings === null) await configurePreview(eleventyConfig);
  else eleventyConfig.addGlobalData("pages", settings.pages);
}

async function configurePreview(eleventyConfig: EleventyConfig): Promise<void> {
  const preview = previewPages();
  eleventyConfig.setInputDirectory(join("layouts", "pages"));
  eleventyConfig.setOutputDirectory(preview.outFolder);
  eleventyConfig.addGlobalData("pages", preview.pages);
  eleventyConfig.on("eleventy.after", () => preview.writeBeside());
  // live reload needs a script and a socket, which the strict policy of a page forbids
  eleventyConfig.addTransform("without-policy", (html) => html.replace(POLICY, ""));
  // the pages are computed anew at each build, so content and data need no reset; a reset would also let two builds run
  // at once when a file is saved while one is running
  for (const glob of [...preview.contentGlobs, "./data/*.json"]) {
    eleventyConfig.addWatchTarget(glob, { resetConfig: false });
  }
  for (const glob of ["./layouts/**/*", "./scripts/**/*.ts"]) {
    eleventyConfig.addWatchTarget(glob, { resetConfig: true });
  }
}
