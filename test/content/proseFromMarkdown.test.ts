import { describe, expect, test } from "vitest";
import { proseFromMarkdown } from "../../scripts/content/proseFromMarkdown.ts";

const read = (text: string) => proseFromMarkdown(text, (target) => `../${target}`);

describe("prose of an owner", () => {
  test("becomes one section a heading, the first may have none", () => {
    const { prose, anchors } = read(
      "Start here.\n\n# Air\n\nIt *falls*.\n\n## Air\n\n### Wasser & Höhe\n\nx",
    );
    expect(prose.sections).toEqual([
      { id: "prose-start", heading: null, html: "<p>Start here.</p>" },
      { id: "prose-air", heading: "Air", html: "<p>It <em>falls</em>.</p>" },
      { id: "prose-air-2", heading: "Air", html: "" },
      { id: "prose-wasser-hohe", heading: "Wasser & Höhe", html: "<p>x</p>" },
    ]);
    expect(anchors).toEqual(["air", "air-2", "wasser-hohe"]);
  });

  test("an empty text has no section", () => {
    expect(read("\n \n").prose.sections).toEqual([]);
  });

  test("tags, scripts and template marks appear as text", () => {
    const { html } = read('<script>alert(1)</script> <b onclick="x">b</b> {{ secret }} {% raw %}').prose
      .sections[0]!;
    expect(html).toBe(
      "<p>&lt;script&gt;alert(1)&lt;/script&gt; &lt;b onclick=&quot;x&quot;&gt;b&lt;/b&gt; {{ secret }} {% raw %}</p>",
    );
  });

  test.each([
    "javascript:alert(1)",
    "JAVASCRIPT:alert(1)",
    "vbscript:x",
    "file:///etc/passwd",
    "data:text/html,x",
  ])("a link to %s stays text", (target) => {
    const { prose, links } = read(`[press](${target})`);
    expect(prose.sections[0]!.html).not.toContain("<a");
    expect(links).toEqual([]);
  });

  test("links are given with their line; those inside the text and the pack are turned", () => {
    const { prose, links } = read(
      "# Air\n\nSee [air](#air),\n[bench](sites/bench.md) and [rule](https://example.org/a).",
    );
    expect(links.map(({ target }) => target)).toEqual(["#air", "sites/bench.md", "https://example.org/a"]);
    expect(links[0]!.line).toBe(3);
    expect(prose.sections[0]!.html).toContain('<a href="#prose-air">');
    expect(prose.sections[0]!.html).toContain('<a href="../sites/bench.md">');
  });

  test.each(["http://example.org/x.jpg", "//example.org/x.jpg", "data:image/png;base64,AAAA", "https://a/b"])(
    "the image %s is left out and its words stay",
    (target) => {
      const { prose, images } = read(`![the **bench**](${target})`);
      expect(prose.sections[0]!.html).toBe("<p>the bench</p>");
      expect(images).toEqual([{ target, alt: "the bench", line: 1 }]);
    },
  );

  test("an image of the area is kept, its path read as written", () => {
    const { prose, images } = read("![bench](photos/north%20bench.jpg)");
    expect(images).toEqual([{ target: "photos/north bench.jpg", alt: "bench", line: 1 }]);
    expect(prose.sections[0]!.html).toContain('src="photos/north%20bench.jpg" alt="bench"');
  });

  test.each(["[", "![", "*", ">", "`", "<", "[a](", "- "])(
    "300 kB of %j end in seconds",
    (piece) => {
      const started = performance.now();
      read(piece.repeat(Math.floor(300_000 / piece.length)));
      expect(performance.now() - started).toBeLessThan(20_000);
    },
    30_000,
  );
});
