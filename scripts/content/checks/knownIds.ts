import type { AreaDraft } from "../areaDraft.ts";
import { DEFAULT_SESSION_IDS } from "../limits.ts";

/** Ids that exist, by kind; null where their file could not be read, so that nothing is called unknown. */
export interface KnownIds {
  blocks: string[] | null;
  sessions: string[] | null;
  starts: string[] | null;
  features: string[] | null;
  spots: string[] | null;
  sites: string[];
  walkIns(site: string | undefined): string[] | null;
}

/** What the files of an area name. */
export function knownIds(draft: AreaDraft): KnownIds {
  const area = draft.area.loose;
  const given = (list: readonly ({ id?: string | undefined } | undefined)[] | undefined): string[] =>
    (list ?? []).flatMap((entry) => entry?.id ?? []);
  const features = draft.map === null ? [] : draft.map.loose && (draft.map.loose.features ?? []);
  const idsOf = (list: NonNullable<typeof features>): string[] =>
    list.flatMap((f) => f?.properties?.id ?? []);
  return {
    blocks: area && given(area.blocks),
    sessions: area && (area.sessions ? given(area.sessions) : [...DEFAULT_SESSION_IDS]),
    starts: area && [...given(area.camps), ...given(area.parkings)],
    features: features && idsOf(features),
    spots: features && idsOf(features.filter((f) => f?.properties?.kind === "helicopter-spot")),
    sites: draft.sites.map(({ id }) => id),
    walkIns: (id) => {
      const site = draft.sites.find((candidate) => candidate.id === id);
      return site?.loose ? given(site.loose.walkIns) : null;
    },
  };
}
