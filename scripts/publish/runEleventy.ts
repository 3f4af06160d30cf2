import { join } from "node:path";
import Eleventy from "@11ty/eleventy";
import { configureEleventy } from "./configureEleventy.ts";
import { checkedPages, type Pages } from "./pages.ts";

/**
 * Renders the templates of layouts/pages over finished pages into a folder. Nothing but `layoutsFolder` is read, and no
 * configuration file, so that no file of an owner can become a template.
 *
 * @throws {Error} a template that fails, with the name of the template and of what it missed
 */
export async function renderWithEleventy(
  pages: Pages,
  layoutsFolder: string,
  outFolder: string,
): Promise<void> {
  const checked = checkedPages(pages);
  const eleventy = new Eleventy(join(layoutsFolder, "pages"), outFolder, {
    configPath: "",
    quietMode: true,
    config: (eleventyConfig) => configureEleventy(eleventyConfig, { layoutsFolder, pages: () => checked }),
  });
  await eleventy.init();
  eleventy.disableLogger();
  const exitCode = process.exitCode;
  try {
    await eleventy.write();
  } catch (error) {
    throw new Error(`The pages could not be rendered: ${reasons(error).join(" < ")}`, { cause: error });
  } finally {
    // Eleventy sets it by itself when a template fails; the command that called decides
    process.exitCode = exitCode;
  }
}

/** Serves the pages with live reload from the configuration file of the project, until the process is stopped. */
export async function serveWithEleventy(options: {
  layoutsFolder: string;
  outFolder: string;
  configPath: string;
  port: number;
}): Promise<{ stop(): Promise<void> }> {
  const eleventy = new Eleventy(join(options.layoutsFolder, "pages"), options.outFolder, {
    configPath: options.configPath,
    quietMode: true,
    runMode: "serve",
  });
  await eleventy.init();
  await eleventy.watch();
  await eleventy.serve(options.port);
  return {
    async stop() {
      await eleventy.stopWatch();
    },
  };
}

/** The messages of an error and of what caused it, outermost first, each once. */
function reasons(error: unknown): string[] {
  const messages: string[] = [];
  let current: unknown = error;
  for (let depth = 0; depth < 8 && current instanceof Error; depth += 1) {
    const message = current.message.replace(/\s*\n\s*/g, " ").trim();
    if (message !== "" && !messages.includes(message)) messages.push(message);
    current = (current as { originalError?: unknown }).originalError ?? current.cause;
  }
  return messages.length > 0 ? messages : [String(error)];
}
