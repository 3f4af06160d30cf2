import type { SiteContent } from "../content/areaContent.ts";
import type { PackCheck } from "../content/schema/packSchema.ts";
import type { PackContext } from "./packContext.ts";
export function composeSiteChecks(_site: SiteContent, _context: PackContext): PackCheck[] {
  return [];
}
