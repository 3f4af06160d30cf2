import type { AreaDraft } from "../areaDraft.ts";
import type { Problem } from "../problem.ts";
import { SHOOTING_LAYERS } from "../schema/shootingRuleSchema.ts";

/** Problems of the second and later holders of one id. */
export function idsTwice(file: string, list: string, ids: readonly (string | undefined)[]): Problem[] {
  return ids.flatMap((id, i) => {
    if (id === undefined || ids.indexOf(id) === i) return [];
    const found = `${JSON.stringify(id)}, also at ${list}.${ids.indexOf(id)}`;
    const expected = "an id of its own for each";
    const fix = `write another id, such as ${JSON.stringify(`${id}-2`)}`;
    return [{ code: "id-twice", file, field: `${list}.${i}.id`, found, expected, fix } as const];
  });
}

/** Ids that two things of one kind in one file have. */
export function repeatedIds(draft: AreaDraft): Problem[] {
  const { file, loose: area } = draft.area;
  const idsOf = (
    list: readonly ({ id?: string | undefined } | undefined)[] | undefined,
  ): (string | undefined)[] => (list ?? []).map((entry) => entry?.id);
  const problems: Problem[] = [];
  for (const list of ["permission", "blocks", "sessions", "camps", "parkings"] as const) {
    problems.push(...idsTwice(file, list, idsOf(area?.[list])));
  }
  const camps = idsOf(area?.camps);
  for (const [i, id] of idsOf(area?.parkings).entries()) {
    if (id === undefined || !camps.includes(id)) continue;
    const found = `${JSON.stringify(id)}, also a camp`;
    const expected = "an id that no camp has: walk-ins start at either";
    const fix = `write another id, such as ${JSON.stringify(`${id}-parking`)}`;
    problems.push({ code: "id-twice", file, field: `parkings.${i}.id`, found, expected, fix });
  }
  for (const layer of SHOOTING_LAYERS) {
    problems.push(...idsTwice(file, `shootingLight.${layer}`, idsOf(area?.shootingLight?.[layer])));
  }
  for (const site of draft.sites) {
    problems.push(...idsTwice(site.file, "lanes", idsOf(site.loose?.lanes)));
    problems.push(...idsTwice(site.file, "walkIns", idsOf(site.loose?.walkIns)));
    for (const [session, list] of Object.entries(site.loose?.approaches ?? {})) {
      problems.push(...idsTwice(site.file, `approaches.${session}`, idsOf(list)));
    }
  }
  for (const trip of draft.trips)
    problems.push(...idsTwice(trip.file, "hunters", idsOf(trip.loose?.hunters)));
  return problems;
}

/** Sites with the number of an earlier one. */
export function numbersTwice(draft: AreaDraft): Problem[] {
  const firstOf = new Map<number, string>();
  const numbers = draft.sites.flatMap(({ loose }) => loose?.number ?? []);
  return draft.sites.flatMap(({ file, id, loose }) => {
    const number = loose?.number;
    if (number === undefined) return [];
    const first = firstOf.get(number);
    if (first === undefined) {
      firstOf.set(number, id);
      return [];
    }
    const free = Array.from({ length: 99 }, (_, i) => i + 1).find(
      (n) => n > Math.max(...numbers) || !numbers.includes(n),
    );
    const fix = `write "number": ${Math.max(...numbers) < 99 ? Math.max(...numbers) + 1 : free}, if this site is the newer one`;
    const found = `${number}, which ${first} has`;
    return [
      {
        code: "number-taken",
        file,
        field: "number",
        found,
        expected: "a number of its own, 1 to 99",
        fix,
      } as const,
    ];
  });
}
