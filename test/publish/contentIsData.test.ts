import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test, vi } from "vitest";
import { runStubPack } from "./runStubPack.ts";
import { digestOf, filesBelow, scratchFolder, writeFiles } from "./scratchFolder.ts";
import { ended, tsProcess } from "./tsProcess.ts";

vi.setConfig({ testTimeout: 60_000 });

const HARMLESS = { "areas/a/area.json": JSON.stringify({ name: "A", summary: "a" }) };

function evilFiles(proof: string): Record<string, string> {
  const write = `require("node:fs").writeFileSync(${JSON.stringify(proof)}, "ran")`;
  const breakOut = `{{ range.constructor('return process.mainModule.${write}')() }}`;
  return {
    "evil.njk": breakOut,
    "evil.liquid": "{% include '../../../etc/passwd' %}",
    "evil.11ty.js": `${write}; module.exports = class { render() { return "evil"; } };`,
    "evil.11tydata.js": `${write}; module.exports = {};`,
    "content.11tydata.js": `${write}; module.exports = {};`,
    "_data/evil.js": `${write}; module.exports = {};`,
    "areas/a/a.11tydata.js": `${write}; module.exports = {};`,
    "areas/a/areas.json": '{"permalink": "../../evil.html"}',
    "areas/a/evil.md": `---js\n{ permalink: (${write}, "../../../evil.html") }\n---\n${breakOut}`,
    "areas/a/legacy.html": `---jsLegacy\n{ a: ${write} }\n---\nx`,
    "areas/a/outside.njk": "---\npermalink: ../../evil.html\n---\nx",
    ".eleventy.js": `${write}; module.exports = () => ({});`,
    "eleventy.config.js": `${write}; module.exports = () => ({});`,
  };
}

describe("an owner's folder is data: nothing in it runs, and nothing is written outside the pack", () => {
  test("templates, data files and configuration of a template engine have no effect at all", async () => {
    const folder = scratchFolder();
    const proof = join(folder, "proof");
    writeFiles(join(folder, "content"), { ...HARMLESS, ...evilFiles(proof) });
    writeFiles(join(folder, "plain"), HARMLESS);
    const env = { SOURCE_DATE_EPOCH: "1" };
    for (const name of ["content", "plain"]) {
      const args = ["--content", join(folder, name), "--out", join(folder, `${name}-out`)];
      expect(await runStubPack(args, { env })).toMatchObject({ status: 0, err: "" });
    }
    expect(existsSync(proof)).toBe(false);
    expect(digestOf(join(folder, "content-out"))).toBe(digestOf(join(folder, "plain-out")));
    expect(filesBelow(folder).filter((path) => path.endsWith("evil.html"))).toEqual([]);
  });

  test("nor have they when the command is started inside that folder", async () => {
    const folder = scratchFolder();
    const proof = join(folder, "proof");
    const content = join(folder, "content");
    writeFiles(content, { ...HARMLESS, ...evilFiles(proof), "package.json": '{"type": "module"}' });
    const run = tsProcess("stubPackProcess.ts", ["--content", ".", "--out", "../_site"], {}, content);
    expect(await ended(run)).toMatchObject({ status: 0, err: "" });
    expect(existsSync(proof)).toBe(false);
    expect(filesBelow(join(folder, "_site"))).toHaveLength(10);
  });

  test.each([
    ["{{ 7 * 7 }}", "{{ 7 * 7 }}"],
    ["{% raw %}{{ pages | dump }}{% endraw %}", "{% raw %}{{ pages | dump }}{% endraw %}"],
    [
      '{{ range.constructor("return process.exit(9)")() }}',
      "{{ range.constructor(&quot;return process.exit(9)&quot;)() }}",
    ],
    ["<script>alert(1)</script>", "&lt;script&gt;alert(1)&lt;/script&gt;"],
    ['"><img src=x onerror=alert(1)>', "&quot;&gt;&lt;img src=x onerror=alert(1)&gt;"],
    ["---js\n{}\n---", "---js\n{}\n---"],
    ["`x` &amp; <%= 1 %> {# c #}", "`x` &amp;amp; &lt;%= 1 %&gt; {# c #}"],
  ])("the text %j is printed as text", async (text, printed) => {
    const folder = scratchFolder();
    writeFiles(join(folder, "content"), {
      "areas/a/area.json": JSON.stringify({ name: text, summary: text }),
    });
    const out = join(folder, "_site");
    const { status, err } = await runStubPack(["--content", join(folder, "content"), "--out", out]);
    expect({ status, err }).toEqual({ status: 0, err: "" });
    const page = readFileSync(join(out, "areas/a/index.html"), "utf8");
    expect(page).toContain(`<title>${printed}</title>`);
    expect(page).toContain(`<p class="note">${printed}</p>`);
    expect(JSON.parse(readFileSync(join(out, "areas/a/pack.json"), "utf8")).area.name).toBe(text);
  });
});
