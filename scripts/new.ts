import { newCommand } from "./content/newCommand.ts";
import { projectFolders } from "./publish/projectFolders.ts";

const now = new Date();
const today = [now.getFullYear(), now.getMonth() + 1, now.getDate()]
  .map((part) => String(part).padStart(2, "0"))
  .join("-");

process.exitCode = await newCommand(process.argv.slice(2), {
  out: process.stdout,
  err: process.stderr,
  dataDir: projectFolders.data,
  today,
});
