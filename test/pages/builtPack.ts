import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { ended, tsProcess } from "../publish/tsProcess.ts";

export interface BuiltPack {
  /** folder of the pages */
  folder: string;
  /** folder the pack was made of */
  content: string;
}

const path = (name: string): string => fileURLToPath(new URL(`../../${name}`, import.meta.url));

export const CONTENT = { demo: path("content"), worstCase: path("test/fixtures/worst-case") } as const;

const built = new Map<string, Promise<BuiltPack>>();
const folders: string[] = [];

/**
 * The pack of a content folder as the command builds it, made once for all tests of a file.
 *
 * @param args further arguments, such as `["--paper", "A5"]`
 * @throws {Error} the pack was not built, with what the command said
 */
export function builtPack(content: keyof typeof CONTENT, args: readonly string[] = []): Promise<BuiltPack> {
  const key = [content, ...args].join(" ");
  const known = built.get(key);
  if (known !== undefined) return known;
  const pack = build(CONTENT[content], args);
  built.set(key, pack);
  return pack;
}

async function build(content: string, args: readonly string[]): Promise<BuiltPack> {
  const parent = mkdtempSync(join(tmpdir(), "leelight-pages-"));
  folders.push(parent);
  const folder = join(parent, "pack");
  const all = ["--content", content, "--out", folder, ...args];
  const { status, err } = await ended(
    tsProcess("../../scripts/pack.ts", all, { SOURCE_DATE_EPOCH: "1806000000" }),
  );
  if (status !== 0) throw new Error(`the pack must be built, found status ${status}: ${err}`);
  return { folder, content };
}

/** Removes what was built. */
export function removeBuiltPacks(): void {
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
  built.clear();
}
