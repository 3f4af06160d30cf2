import { join, resolve } from "node:path";
import { fileURLToPath } from "node:url";

const root = resolve(fileURLToPath(new URL("../..", import.meta.url)));

/** The folders of this program, wherever it was started from. */
export const projectFolders = {
  root,
  layouts: join(root, "layouts"),
  data: join(root, "data"),
  scripts: join(root, "scripts"),
} as const;

/** Where what was computed of an area is kept. */
export const computedFolder = join(root, "node_modules", ".cache", "leelight", "computed");
