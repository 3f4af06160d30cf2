import { type CommandSurroundings, packCommand } from "../../scripts/publish/packCommand.ts";
import type { PackSteps } from "../../scripts/publish/preparePack.ts";
import { stubLayouts } from "./stubLayouts.ts";
import { stubSteps } from "./stubSteps.ts";

/** The pack command over the stub rooms and layouts; what it says is returned. */
export async function runStubPack(
  args: string[],
  changed: Partial<CommandSurroundings> & { steps?: PackSteps } = {},
): Promise<{ status: number; out: string; err: string }> {
  const { steps = stubSteps, ...around } = changed;
  let out = "";
  let err = "";
  const status = await packCommand(args, steps, {
    out: { write: (text) => (out += text) },
    err: { write: (text) => (err += text) },
    env: {},
    now: () => new Date("2026-03-30T07:00:00Z"),
    layoutsFolder: stubLayouts,
    lockWaitMs: 0,
    ...around,
  });
  return { status, out, err };
}
