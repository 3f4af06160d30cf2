import { brackwetherRange } from "./brackwetherRange/brackwetherRange.ts";
import type { DemoArea } from "./demoArea.ts";
import { turnpailHollow } from "./turnpailHollow/turnpailHollow.ts";

/** The demonstration areas, one in each hemisphere. */
export const demoAreas: DemoArea[] = [turnpailHollow, brackwetherRange];
