import type { AreaPack } from "./sheetParts.ts";
import { siteBar } from "./siteBar.ts";

/** Sites where nobody may sit now, with the reason, in number order. */
export function barredSites(area: AreaPack): { number: number; name: string; reason: string }[] {
  return (area.pack.sites ?? []).flatMap((site) => {
    const bar = siteBar(area, site);
    return bar === null
      ? []
      : [{ number: site.number, name: site.name, reason: `${bar.heading}: ${bar.reason}` }];
  });
}
