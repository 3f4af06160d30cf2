import { packCommand } from "../../scripts/publish/packCommand.ts";
import { stubLayouts } from "./stubLayouts.ts";
import { stubSteps } from "./stubSteps.ts";

/** The pack command over the stub rooms, as a process that a test can kill. */
process.exitCode = await packCommand(process.argv.slice(2), stubSteps, {
  out: process.stdout,
  err: process.stderr,
  env: process.env,
  now: () => new Date(),
  layoutsFolder: stubLayouts,
  lockWaitMs: Number(process.env.LOCK_WAIT_MS ?? 0),
});
