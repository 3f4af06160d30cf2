import { readFileSync } from "node:fs";
import { join } from "node:path";
import { type ComposeOptions, composePack } from "../briefing/composePack.ts";
import { packInstant } from "../briefing/packInstant.ts";
import { composePages } from "../briefing/pages/composePages.ts";
import type { AreaContent } from "../content/areaContent.ts";
import type { DetailsFile } from "../content/schema/detailsSchema.ts";
import type { PackFile } from "../content/schema/packSchema.ts";
import { drawPages } from "../drawing/drawPages.ts";
import type { AreaPack } from "./areaPack.ts";
import { type AreaText, areaText } from "./areaText.ts";
import { type ComputedStore, computedStore, type StoredArea } from "./computedStore.ts";
import { type KnownArea, loadAreas } from "./loadAreas.ts";
import type { PackOptions } from "./packOptions.ts";
import type { PackSteps } from "./preparePack.ts";
import { computedFolder, projectFolders } from "./projectFolders.ts";

/** The rooms of this program as a pack goes through them. */
export const packSteps: PackSteps<KnownArea> = {
  loadAreas: (options) => loadAreas(options.contentDir, projectFolders.data, options.area, storeFor(options)),
  async composePack({ content, ground, computed }, shared, options) {
    if (computed !== undefined) return builtNow(computed, content, options);
    const { pack, details } = composePack({ content, ground }, shared, composeOptions(options));
    const store = storeFor(options);
    if (store === null) return { content, pack, details };
    const text = areaText({ pack, details });
    await store.keep(content, text);
    return { content, pack, details, text };
  },
  composePages: (packs, shared, options) => drawPages(composePages(packs, shared, options)),
};

function composeOptions({ edition, trip, year, asOf, builtAt }: PackOptions): ComposeOptions {
  const tzVersion = process.versions.tz ?? "unknown";
  return { edition, trip, year, asOf, builtAt, generator: generator(), tzVersion };
}

/** The store of what was computed; null where the program does not know its own version, as when it runs from its files. */
function storeFor(options: PackOptions): ComputedStore | null {
  const program = process.env.LEELIGHT_PROGRAM;
  if (program === undefined) return null;
  const { edition, trip, year } = options;
  const beneath = [generator(), process.version, process.versions.tz ?? "", process.versions.icu ?? ""];
  return computedStore(computedFolder, projectFolders.data, (area) => [
    program,
    JSON.stringify({ edition, trip, year, asOf: asOfText(area, options) }),
    ...beneath,
  ]);
}

/** An as-of moment that nobody pinned is the time of the build: what was computed then is not taken for another moment. */
function asOfText({ facts }: StoredArea, { asOf, builtAt }: PackOptions): string {
  return asOf?.toISOString() ?? facts.asOf ?? builtAt.toISOString();
}

/** What was computed before, with the time of this build. */
function builtNow(text: AreaText, content: AreaContent, options: PackOptions): AreaPack {
  const before = JSON.parse(text.pack) as PackFile;
  const builtAt = packInstant(options.builtAt, content.facts.timezone);
  const pack = text.pack.replace(`"builtAt": "${before.builtAt}"`, `"builtAt": "${builtAt}"`);
  return {
    content,
    pack: { ...before, builtAt },
    details: JSON.parse(text.details) as DetailsFile,
    text: { pack, details: text.details },
  };
}

/** Name and version of this program. */
function generator(): string {
  const { name, version } = JSON.parse(readFileSync(join(projectFolders.root, "package.json"), "utf8")) as {
    name: string;
    version: string;
  };
  return `${name} ${version}`;
}
