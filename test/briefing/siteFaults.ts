import type { DetailsFile } from "../../scripts/content/schema/detailsSchema.ts";
import type { PackFile } from "../../scripts/content/schema/packSchema.ts";
import { phaseFaults } from "./phaseFaults.ts";
import { coverageFaults, sitFaults, tableFaults } from "./tableFaults.ts";

/** Faults in the sites and the coverage of a pack and of the details beside it. */
export function siteFaults(pack: PackFile, details: DetailsFile): string[] {
  const sites = pack.sites ?? [];
  const sessions = details.sessions.map((session) => session.id);
  const numbers = sites.map((site) => site.number);
  const faults: string[] = [];
  if (numbers.join() !== numbers.toSorted((a, b) => a - b).join()) faults.push("sites: not by number");
  if (details.sites?.map((site) => site.id).join() !== sites.map((site) => site.id).join())
    faults.push("details.sites: not the sites of the pack");
  const days = new Set(sites.flatMap((site) => site.phases?.map((day) => day.localDate).join() ?? []));
  if (days.size > 1) faults.push("sites: phases of different days");
  return [
    ...faults,
    ...sites.flatMap((site) => [
      ...phaseFaults(site, pack),
      ...tableFaults(site, sessions),
      ...sitFaults(site, details),
    ]),
    ...coverageFaults(pack, sessions),
  ];
}
