import type { ComposedPack } from "../../scripts/briefing/composePack.ts";
import { detailsFile } from "../../scripts/content/schema/detailsSchema.ts";
import { packFile } from "../../scripts/content/schema/packSchema.ts";
import { eachDay } from "../../scripts/time/civilTime.ts";
import { dayFaults } from "./dayFaults.ts";
import { keyOrderFaults } from "./keyOrderFaults.ts";
import { siteFaults } from "./siteFaults.ts";
import { tripFaults } from "./tripFaults.ts";
import { valueFaults } from "./valueFaults.ts";

/** Everything by which a composed pack breaks the promises that pack.json makes to its readers; empty when it keeps them. */
export function packFaults(composed: ComposedPack): string[] {
  const { content, pack, details } = composed;
  const { timezone } = pack.area;
  const tripDays = content.trips.flatMap((trip) => eachDay(trip.facts.from, trip.facts.to));
  return [
    ...schemaFaults(packFile.safeParse(pack)),
    ...schemaFaults(detailsFile.safeParse(details)).map((fault) => `details.${fault}`),
    ...keyOrderFaults(packFile, pack),
    ...keyOrderFaults(detailsFile, details).map((fault) => `details.${fault}`),
    ...valueFaults(pack, timezone, "with why"),
    ...valueFaults(details, timezone, "free").map((fault) => `details.${fault}`),
    ...dayFaults(pack, tripDays),
    ...siteFaults(pack, details),
    ...tripFaults(composed),
  ];
}

interface Parsed {
  error?: { issues: { path: PropertyKey[]; message: string }[] } | undefined;
}

function schemaFaults({ error }: Parsed): string[] {
  return (error?.issues ?? []).map((issue) => `${issue.path.map(String).join(".")}: ${issue.message}`);
}
