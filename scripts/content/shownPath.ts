import { relative, resolve, sep } from "node:path";

/** A path as problems show it: from the folder the command was started in, whole where it lies elsewhere. */
export function shownPath(path: string): string {
  const near = relative(process.cwd(), path);
  const shown = near === "" ? "." : near.startsWith("..") ? resolve(path) : near;
  return sep === "/" ? shown : shown.replaceAll(sep, "/");
}
