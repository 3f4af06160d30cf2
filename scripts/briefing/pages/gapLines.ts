import type { AreaPack } from "./sheetParts.ts";

/** The gap sentences of the area, each beginning "No site suits:". */
export function gapLines(area: AreaPack): string[] {
  return area.details.gapSentences.map((sentence) =>
    sentence.startsWith("No site suits") ? sentence : `No site suits: ${sentence}`,
  );
}
