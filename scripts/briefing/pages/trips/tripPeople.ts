import type { SharedData } from "../../../content/areaContent.ts";
import { type PenRow, penRow } from "../penRow.ts";
import type { AreaPack } from "../sheetParts.ts";
import type { PackedTrip } from "./packedTrips.ts";

/** What a search team asks about each person; what is not written is a blank. */
export interface TripPerson {
  name: string;
  rows: PenRow[];
}

/** The people of a trip. Contacts and medical notes are in the owner edition alone. */
export function tripPeople(area: AreaPack, shared: SharedData, { written }: PackedTrip): TripPerson[] {
  const own = area.pack.edition === "owner";
  return written.facts.hunters.map((hunter) => {
    const stand = shared.stands.find((entry) => entry.id === hunter.standId)?.name;
    const weapon = shared.firearms.find((entry) => entry.id === hunter.firearmId)?.name;
    const gear = [weapon, stand].filter((part) => part !== undefined);
    return {
      name: hunter.name,
      rows: [
        penRow("Phone", null),
        penRow("Age, look", null),
        penRow("Colour worn", null),
        penRow("Clothes, boot tread", null),
        penRow("Medical", own ? hunter.medical : null),
        penRow("Weapon, stand", gear.length === 0 ? null : gear.join(", ")),
        ...(own ? [penRow("Own contact", hunter.contact)] : []),
      ],
    };
  });
}
