import type { AreaContent } from "../content/areaContent.ts";
import type { PackSteps } from "./preparePack.ts";

/** The rooms of this program as a pack goes through them. */
export const packSteps: PackSteps<{ content: AreaContent }> = {
  async loadAreas() {
    throw new Error("areas can not be read yet");
  },
  composePack() {
    throw new Error("areas can not be computed yet");
  },
  composePages() {
    throw new Error("pages can not be laid out yet");
  },
};
