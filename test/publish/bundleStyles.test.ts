import { join } from "node:path";
import { expect, test } from "vitest";
import { bundleStyles } from "../../scripts/publish/bundleStyles.ts";
import { scratchFolder, writeFiles } from "./scratchFolder.ts";

const styles = { "styles/tokens.css": "T{}\r\n", "styles/base.css": "B{}", "styles/page.css": "P{}\n\n" };

test("the style sheet holds tokens, base, page, then components by name, whatever order the disk gives", async () => {
  const folder = scratchFolder();
  writeFiles(folder, {
    "components/zebra/zebra.css": "Z{}",
    ...styles,
    "components/answer/answer.css": "A{}",
    "components/answer/answer.njk": "",
  });
  expect(await bundleStyles(folder)).toBe("T{}\n\nB{}\n\nP{}\n\nA{}\n\nZ{}\n");
});

test("without components the three base sheets are enough; a missing base sheet is an error", async () => {
  const folder = scratchFolder();
  writeFiles(folder, styles);
  expect(await bundleStyles(folder)).toBe("T{}\n\nB{}\n\nP{}\n");
  await expect(bundleStyles(join(folder, "nowhere"))).rejects.toThrow("tokens.css");
});
