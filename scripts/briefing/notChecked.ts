import type { PackFile, PackSite } from "../content/schema/packSchema.ts";

/** What the program could not check, with what is missing: printed for the reader, never counted as good. */
export function notChecked(sites: readonly PackSite[]): PackFile["notChecked"] {
  return sites.flatMap((site) =>
    site.checks
      .filter((check) => check.result === "NOT CHECKED")
      .map((check) => ({ check: check.id, subject: site.id, text: check.text })),
  );
}
