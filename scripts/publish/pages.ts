/** One page to be written: finished values for a template, and the file it becomes. */
export interface Page {
  /** path from the root of the pack, such as "areas/larch-valley/sites/larch-bench.html" */
  permalink: string;
}

/** The pages of a pack by kind; a template in layouts/pages takes one kind and is rendered once for each of its pages. */
export type Pages = Record<string, Page[]>;

const PERMALINK = /^(?:[a-z0-9]+(?:-[a-z0-9]+)*\/)*[a-z0-9]+(?:-[a-z0-9]+)*\.html$/;

/**
 * The same pages, once it is sure that each is written inside the pack and none over another.
 *
 * @throws {RangeError} a permalink that is no plain lower-case path to an .html file, or that two pages share
 */
export function checkedPages<P extends Pages>(pages: P): P {
  const kindByPermalink = new Map<string, string>();
  for (const [kind, list] of Object.entries(pages)) {
    for (const { permalink } of list) {
      if (typeof permalink !== "string" || !PERMALINK.test(permalink)) {
        throw new RangeError(
          `permalink of a page of kind "${kind}" must be a plain path to an .html file inside the pack, found ${JSON.stringify(permalink)}`,
        );
      }
      const other = kindByPermalink.get(permalink);
      if (other !== undefined) {
        throw new RangeError(
          `permalink must be unique, found ${JSON.stringify(permalink)} for pages of kind "${other}" and "${kind}"`,
        );
      }
      kindByPermalink.set(permalink, kind);
    }
  }
  return pages;
}
