import { describe, expect, test } from "vitest";
import { createProgress } from "../../scripts/publish/progress.ts";

function screen(isTTY: boolean) {
  const written: string[] = [];
  return { written, isTTY, columns: 40, write: (text: string) => written.push(text) };
}

/** A clock that a test moves on by hand. */
function clock() {
  let nowMs = 0;
  return { now: () => nowMs, pass: (ms: number) => (nowMs += ms) };
}

describe("progress of long work: what, how far, how long", () => {
  test("away from a terminal a step is one plain line, and a long one says every five seconds how far it is", async () => {
    const shown = screen(false);
    const time = clock();
    const result = await createProgress(shown, time.now).step("Compute areas", async (tick) => {
      for (const [i, id] of ["a", "b", "c", "d"].entries()) {
        await tick(i, 4, id);
        time.pass(3000);
      }
      await tick(4, 4, "");
      return "done";
    });
    expect(result).toBe("done");
    expect(shown.written).toEqual([
      "Compute areas, 2 of 4 (c), 6.0 s so far\n",
      "Compute areas, 4 of 4, 12.0 s so far\n",
      "Compute areas, 4 of 4, 12.0 s\n",
    ]);
    expect(shown.written.join("")).not.toContain("\u001b");
  });

  test("on a terminal one line is written over, cut to the width, and the step ends in a line that stays", async () => {
    const shown = screen(true);
    await createProgress(shown, clock().now).step("Compute areas", (tick) => tick(0, 2, "a".repeat(60)));
    const lines = shown.written.map((text) => text.replace("\r\u001b[K", ""));
    expect(lines[0]).toBe("Compute areas ...");
    expect(lines[1]).toHaveLength(39);
    expect(lines[2]).toBe("Compute areas, 0 of 2, 0.0 s\n");
    expect(shown.written.every((text) => text.startsWith("\r\u001b[K"))).toBe(true);
  });

  test.each([true, false])(
    "a step that fails passes its error on and leaves no half line (terminal: %s)",
    async (isTTY) => {
      const shown = screen(isTTY);
      const failing = createProgress(shown, clock().now).step("Read content", () => {
        throw new Error("broken");
      });
      await expect(failing).rejects.toThrow("broken");
      expect(shown.written.at(-1) ?? "\r\u001b[K").toBe("\r\u001b[K");
    },
  );
});
