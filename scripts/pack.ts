import { packCommand } from "./publish/packCommand.ts";
import { packSteps } from "./publish/packSteps.ts";
import { projectFolders } from "./publish/projectFolders.ts";

process.exitCode = await packCommand(process.argv.slice(2), packSteps, {
  out: process.stdout,
  err: process.stderr,
  env: process.env,
  now: () => new Date(),
  layoutsFolder: projectFolders.layouts,
  lockWaitMs: 120_000,
});
