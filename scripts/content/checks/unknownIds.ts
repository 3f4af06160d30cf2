import type { AreaDraft } from "../areaDraft.ts";
import { nearestWord } from "../nearestWord.ts";
import type { Problem } from "../problem.ts";
import { type KnownIds, knownIds } from "./knownIds.ts";

/** Ids of what all areas share; null when the file could not be read, so that nothing is called unknown. */
export interface SharedIds {
  stands: readonly string[] | null;
  firearms: readonly string[] | null;
}

/** Ids that name nothing, with the nearest that exists. */
export function unknownIds(draft: AreaDraft, shared: SharedIds): Problem[] {
  const { file, loose: area } = draft.area;
  const problems: Problem[] = [];
  const known = knownIds(draft);
  const check = (
    at: { file: string; field: string },
    id: string | null | undefined,
    kind: string,
    ids: readonly string[] | null,
  ): void => {
    if (id === null || id === undefined || ids === null || ids.includes(id)) return;
    const near = nearestWord(id, ids);
    const name = at.field.split(".").at(-1)!;
    const line = /^\d+$/.test(name) ? "" : `${JSON.stringify(name)}: `;
    const fix = near
      ? `write ${line}${JSON.stringify(near)}`
      : ids.length === 0
        ? "there is none yet; add one, or delete the line"
        : "write one of these, or add it";
    const expected = `an id that exists, ${kind}${ids.length === 0 ? "" : `: ${listed(ids)}`}`;
    problems.push({ code: "id-unknown", ...at, found: JSON.stringify(id), expected, fix });
  };

  if (area) {
    for (const [i, entry] of (area.permission ?? []).entries()) {
      check({ file, field: `permission.${i}.block` }, entry?.block, "block", known.blocks);
    }
    for (const session of Object.keys(area.seatBeforeMin ?? {})) {
      check({ file, field: `seatBeforeMin.${session}` }, session, "session", known.sessions);
    }
    const spot = area.emergency?.helicopterSpot?.feature;
    check(
      { file, field: "emergency.helicopterSpot.feature" },
      spot,
      "helicopter-spot of the map",
      known.spots,
    );
  }
  for (const site of draft.sites) {
    const at = (field: string) => ({ file: site.file, field });
    check(at("block"), site.loose?.block, "block", known.blocks);
    check(at("stand.standId"), site.loose?.stand?.standId, "stand in data/stands.json", shared.stands);
    for (const [session, list] of Object.entries(site.loose?.approaches ?? {})) {
      check(at(`approaches.${session}`), session, "session", known.sessions);
      for (const [i, approach] of (list ?? []).entries()) {
        check(at(`approaches.${session}.${i}.along`), approach?.along, "map feature", known.features);
      }
    }
    for (const [i, walkIn] of (site.loose?.walkIns ?? []).entries()) {
      check(at(`walkIns.${i}.from`), walkIn?.from, "camp or parking", known.starts);
      if (typeof walkIn?.along === "string") {
        check(at(`walkIns.${i}.along`), walkIn.along, "map feature", known.features);
      }
    }
    for (const [i, note] of (site.loose?.localNotes ?? []).entries()) {
      check(at(`localNotes.${i}.session`), note?.session, "session", known.sessions);
    }
  }
  for (const trip of draft.trips) checkTrip(trip, known, shared, check);
  for (const camera of draft.cameras) {
    check({ file: camera.file, field: "site" }, camera.loose?.site, "site", known.sites);
    const site = draft.sites.find(({ id }) => id === camera.loose?.site);
    const approaches = site?.loose
      ? Object.values(site.loose.approaches ?? {}).flatMap((list) => (list ?? []).flatMap((a) => a?.id ?? []))
      : null;
    check(
      { file: camera.file, field: "approach" },
      camera.loose?.approach,
      "approach of its site",
      approaches,
    );
  }
  for (const [i, row] of (draft.roster?.loose?.rows ?? []).entries()) {
    const at = (field: string) => ({ file: draft.roster!.file, field: `rows.${i}.${field}` });
    check(at("block"), row?.block, "block", known.blocks);
    check(at("roadEnd"), row?.roadEnd, "camp or parking", known.starts);
  }
  return problems;
}

type Check = (
  at: { file: string; field: string },
  id: string | null | undefined,
  kind: string,
  ids: readonly string[] | null,
) => void;

function checkTrip(trip: AreaDraft["trips"][number], known: KnownIds, shared: SharedIds, check: Check): void {
  const { loose } = trip;
  const at = (field: string) => ({ file: trip.file, field });
  const hunters = loose ? (loose.hunters ?? []).flatMap((hunter) => hunter?.id ?? []) : null;
  check(at("base"), loose?.base, "camp or parking", known.starts);
  for (const [i, hunter] of (loose?.hunters ?? []).entries()) {
    check(at(`hunters.${i}.standId`), hunter?.standId, "stand in data/stands.json", shared.stands);
    check(at(`hunters.${i}.firearmId`), hunter?.firearmId, "firearm in data/firearms.json", shared.firearms);
  }
  for (const [i, site] of (loose?.allowedSites ?? []).entries()) {
    check(at(`allowedSites.${i}`), site, "site", known.sites);
  }
  for (const [i, sit] of (loose?.sits ?? []).entries()) {
    check(at(`sits.${i}.session`), sit?.session, "session", known.sessions);
    check(at(`sits.${i}.hunter`), sit?.hunter, "hunter of the trip", hunters);
    check(at(`sits.${i}.site`), sit?.site, "site", known.sites);
    check(at(`sits.${i}.walkIn`), sit?.walkIn, "walk-in of that site", known.walkIns(sit?.site));
  }
  for (const [i, row] of (loose?.forecast?.rows ?? []).entries()) {
    check(at(`forecast.rows.${i}.session`), row?.session, "session", known.sessions);
  }
  for (const { line, row } of trip.forecastFile?.rows ?? []) {
    check(
      { file: trip.forecastFile!.file, field: `line ${line}, session` },
      row.session,
      "session",
      known.sessions,
    );
  }
}

function listed(ids: readonly string[]): string {
  return ids.length > 12 ? `${ids.slice(0, 12).join(", ")} and ${ids.length - 12} more` : ids.join(", ");
}
