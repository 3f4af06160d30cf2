import type { ModelConstants } from "../air/modelConstants.ts";
import type { SiteContent } from "../content/areaContent.ts";
import type { SiteDetails } from "../content/schema/detailsSchema.ts";
export function composeTree(_site: SiteContent, _constants: ModelConstants): SiteDetails["tree"] {
  return null;
}
