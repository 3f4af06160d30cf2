import { PROSE_ID_PREFIX } from "./proseFromMarkdown.ts";

/**
 * Turns a relative link of prose, written from the folder of the area, into the address of the page in the pack:
 * "sites/bench.md" is sites/bench.html, "area.md" is index.html. Other links stay as they are.
 *
 * @param toArea way from the page back to the folder of the area, such as "../"
 */
export function packHref(toArea: "" | "../" | "../../"): (target: string) => string {
  return (target) => {
    const [path = "", anchor] = target.split("#", 2);
    const page = pageOf(path);
    if (page === null) return target;
    return anchor === undefined ? `${toArea}${page}` : `${toArea}${page}#${PROSE_ID_PREFIX}${anchor}`;
  };
}

/** Page of the pack behind a relative link, or null when the link names none. */
export function pageOf(target: string): string | null {
  if (/^area\.(md|json)$/.test(target)) return "index.html";
  const site = /^sites\/([a-z0-9-]+)\.(md|json)$/.exec(target);
  return site ? `sites/${site[1]}.html` : null;
}
