import { relative, resolve } from "node:path";
import { commandLine, optionsText } from "../commandLine.ts";
import { UsageError } from "../UsageError.ts";
import { PACK_OPTIONS, type PackOptions, packOptions } from "./packOptions.ts";

const { content, area, trip, year, "as-of": asOf, paper } = PACK_OPTIONS;
const PREVIEW_OPTIONS = { content, area, trip, year, "as-of": asOf, paper, port: "NUMBER" } as const;

export const PREVIEW_FOLDER = "_preview";

export const PREVIEW_USAGE = `npm run preview -- ${optionsText(PREVIEW_OPTIONS)}

Serves the pages from ${PREVIEW_FOLDER}/ and shows every change at once. A pack in _site/ is never touched.`;

export interface PreviewOptions {
  pack: PackOptions;
  port: number;
  /** the same options as arguments that mean the same from any folder */
  args: string[];
}

/**
 * The options of a preview from its arguments; null when help was asked for.
 *
 * @throws {UsageError} anything that is not understood, in words
 */
export function previewOptions(args: readonly string[], now: Date): PreviewOptions | null {
  const { options: given, help } = commandLine(args, PREVIEW_OPTIONS);
  if (help) return null;
  const { port: portText = "8080", ...forPack } = given;
  const port = Number(portText);
  if (!/^\d+$/.test(portText) || port < 1 || port > 65535) {
    throw new UsageError(`--port must be 1 to 65535, found ${JSON.stringify(portText)}`);
  }
  const settled = { ...forPack, content: resolve(forPack.content ?? "content") };
  const packArgs = Object.entries(settled).map(([name, value]) => `--${name}=${value}`);
  const pack = packOptions([...packArgs, `--out=${PREVIEW_FOLDER}`], now, undefined);
  return pack === null ? null : { pack, port, args: packArgs };
}

/** What a change in the content is noticed by: every file of the folder. */
export function contentGlob(contentDir: string): string {
  const near = relative(process.cwd(), contentDir);
  return near === "" || near.startsWith("..") ? `${contentDir}/**/*` : `./${near}/**/*`;
}
