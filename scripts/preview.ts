import { previewCommand } from "./publish/previewCommand.ts";

process.exitCode = await previewCommand(process.argv.slice(2));
