import { resolve } from "node:path";
import { checkCommand } from "./content/checkCommand.ts";
import { loadAreas } from "./publish/loadAreas.ts";
import { projectFolders } from "./publish/projectFolders.ts";
import { restoreOutput } from "./publish/restoreOutput.ts";

await restoreOutput(resolve("_site"));
process.exitCode = await checkCommand(process.argv.slice(2), {
  out: process.stdout,
  err: process.stderr,
  load: async (contentDir, area) => {
    const { areas, problems } = await loadAreas(contentDir, projectFolders.data, area);
    return { areas: areas.map(({ content }) => content), problems };
  },
});
