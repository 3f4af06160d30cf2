import { fileURLToPath } from "node:url";

/** A few small templates and sheets in the shape of layouts/. */
export const stubLayouts = fileURLToPath(new URL("../fixtures/publish/layouts", import.meta.url));
