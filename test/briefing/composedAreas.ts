import { fileURLToPath } from "node:url";
import { type ComposedPack, type ComposeOptions, composePack } from "../../scripts/briefing/composePack.ts";
import { type LoadedAreas, loadAreas } from "../../scripts/publish/loadAreas.ts";

const path = (name: string): string => fileURLToPath(new URL(`../../${name}`, import.meta.url));

/** The fixture of twelve sites on measured elevation. */
export function loadJacksboro(): Promise<LoadedAreas> {
  return loadAreas(path("test/fixtures/jacksboro/content"), path("data"), null);
}

/** One of the two demonstration areas. */
export function loadDemo(area: string): Promise<LoadedAreas> {
  return loadAreas(path("content"), path("data"), area);
}

export const OPTIONS: ComposeOptions = {
  edition: "owner",
  trip: null,
  year: null,
  asOf: null,
  builtAt: new Date("2026-10-13T22:30:00Z"),
  generator: "leelight test",
  tzVersion: "test",
};

/** The pack of the only area loaded. */
export function composed(
  { areas, shared }: LoadedAreas,
  options: Partial<ComposeOptions> = {},
): ComposedPack {
  return composePack(areas[0]!, shared, { ...OPTIONS, ...options });
}
