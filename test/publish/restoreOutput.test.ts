import { once } from "node:events";
import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync } from "node:fs";
import { join } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import { describe, expect, test, vi } from "vitest";
import { markAsOurs } from "../../scripts/publish/outputFolder.ts";
import { lockOutput } from "../../scripts/publish/outputLock.ts";
import { replaceOutput } from "../../scripts/publish/replaceOutput.ts";
import { restoreOutput } from "../../scripts/publish/restoreOutput.ts";
import { runStubPack } from "./runStubPack.ts";
import { digestOf, filesBelow, scratchFolder, writeFiles } from "./scratchFolder.ts";
import { ended, said, tsProcess } from "./tsProcess.ts";

vi.setConfig({ testTimeout: 60_000 });

/** above the greatest process number of Linux, so never a running process */
const GONE = 4_194_305;

async function pack(folder: string, text: string): Promise<void> {
  writeFiles(folder, { "index.html": text, "areas/a/pack.json": text });
  await markAsOurs(folder);
}

const nothing = { putBack: false, removed: 0, busy: false };

describe("what a killed command left is put right by the next one", () => {
  test("between the two renames: the earlier pack goes back to its place, the new one is removed", async () => {
    const out = join(scratchFolder(), "_site");
    await pack(`${out}.old-${GONE}`, "earlier");
    await pack(`${out}.stage-${GONE}`, "new");
    expect(await restoreOutput(out)).toEqual({ putBack: true, removed: 1, busy: false });
    expect(readFileSync(join(out, "index.html"), "utf8")).toBe("earlier");
    expect(readdirSync(join(out, ".."))).toEqual(["_site"]);
  });

  test("after both renames: the new pack stays, the earlier one is removed", async () => {
    const out = join(scratchFolder(), "_site");
    await pack(out, "new");
    await pack(`${out}.old-${GONE}`, "earlier");
    expect(await restoreOutput(out)).toEqual({ putBack: false, removed: 1, busy: false });
    expect(readFileSync(join(out, "index.html"), "utf8")).toBe("new");
    expect(readdirSync(join(out, ".."))).toEqual(["_site"]);
  });

  test("while it built: the half-built folder is removed, also when it is still empty", async () => {
    const out = join(scratchFolder(), "_site");
    await pack(out, "earlier");
    await pack(`${out}.stage-${GONE}`, "half");
    mkdirSync(`${out}.stage-${GONE + 1}`);
    expect(await restoreOutput(out)).toEqual({ putBack: false, removed: 2, busy: false });
    expect(readdirSync(join(out, ".."))).toEqual(["_site"]);
  });

  test("of two earlier packs the later one is put back", async () => {
    const out = join(scratchFolder(), "_site");
    await pack(`${out}.old-${GONE + 1}`, "first");
    await wait(20);
    await pack(`${out}.old-${GONE}`, "second");
    expect(await restoreOutput(out)).toEqual({ putBack: true, removed: 1, busy: false });
    expect(readFileSync(join(out, "index.html"), "utf8")).toBe("second");
  });

  test("nothing left: nothing is done, and a folder that does not exist yet is not made", async () => {
    const out = join(scratchFolder(), "deep/_site");
    expect(await restoreOutput(out)).toEqual(nothing);
    expect(existsSync(join(out, ".."))).toBe(false);
  });

  test("folders of someone else with such a name are left alone", async () => {
    const out = join(scratchFolder(), "_site");
    writeFiles(join(out, ".."), {
      [`_site.old-${GONE}/mine.txt`]: "mine",
      [`_site.stage-${GONE}/mine.txt`]: "mine",
      "_site.stage-mine/mine.txt": "mine",
      "_site.old/mine.txt": "mine",
    });
    const before = digestOf(join(out, ".."));
    await restoreOutput(out);
    expect(digestOf(join(out, ".."))).toBe(before);
    expect(existsSync(out)).toBe(false);
  });

  test("while another command is at work nothing is touched", async () => {
    const out = join(scratchFolder(), "_site");
    await pack(`${out}.stage-${process.pid}`, "half");
    const lock = await lockOutput(out, 0);
    expect(await restoreOutput(out)).toEqual({ ...nothing, busy: true });
    expect(filesBelow(`${out}.stage-${process.pid}`)).toContain("index.html");
    await lock.release();
    expect((await restoreOutput(out)).removed).toBe(1);
  });

  test("the pack command does it by itself and says so", async () => {
    const folder = scratchFolder();
    const out = join(folder, "_site");
    writeFiles(join(folder, "content"), { "areas/a/area.json": '{"name": 1}' });
    await pack(`${out}.old-${GONE}`, "earlier");
    const { status, out: words } = await runStubPack(["--content", join(folder, "content"), "--out", out]);
    expect(status).toBe(1);
    expect(words).toContain("its earlier pack was put back");
    expect(readFileSync(join(out, "index.html"), "utf8")).toBe("earlier");
  });
});

describe("one command at a time works on an output folder", () => {
  const quiet = { onWait: () => undefined, onRestored: () => undefined };

  test("a second one gives up at once when it may not wait, and changes nothing", async () => {
    const out = join(scratchFolder(), "_site");
    const lock = await lockOutput(out, 0);
    await expect(replaceOutput({ outDir: out, waitMs: 0, ...quiet }, async () => undefined)).rejects.toThrow(
      `process ${process.pid}) is at work on ${out}`,
    );
    await lock.release();
    expect(readdirSync(join(out, ".."))).toEqual([]);
  });

  test("a second one waits, says so once, and goes on when the first is done", async () => {
    const out = join(scratchFolder(), "_site");
    const lock = await lockOutput(out, 0);
    let waits = 0;
    const second = replaceOutput(
      { outDir: out, waitMs: 10_000, ...quiet, onWait: () => (waits += 1) },
      (stage) => pack(stage, "second"),
    );
    await wait(150);
    expect(existsSync(out)).toBe(false);
    await lock.release();
    await second;
    expect(waits).toBe(1);
    expect(readFileSync(join(out, "index.html"), "utf8")).toBe("second");
  });

  test("the lock of a process that is gone, or of an earlier one with the same number, does not hold", async () => {
    const out = join(scratchFolder(), "_site");
    writeFiles(`${out}.lock-breaking`, {
      "holder.json": JSON.stringify({ pid: GONE, startedAt: "1", number: 0 }),
    });
    for (const holder of [
      { pid: GONE, startedAt: "1", number: 0 },
      { pid: process.pid, startedAt: "1", number: 0 },
    ]) {
      writeFiles(`${out}.lock`, { "holder.json": JSON.stringify(holder) });
      const lock = await lockOutput(out, 0);
      await lock.assertHeld();
      await lock.release();
    }
    expect(readdirSync(join(out, ".."))).toEqual([]);
  });

  test("of twenty that want a dead process's lock at once, one at a time has it", async () => {
    const out = join(scratchFolder(), "_site");
    writeFiles(`${out}.lock`, { "holder.json": JSON.stringify({ pid: GONE, startedAt: "1", number: 0 }) });
    let inside = 0;
    let most = 0;
    await Promise.all(
      Array.from({ length: 20 }, async () => {
        const lock = await lockOutput(out, 60_000);
        inside += 1;
        most = Math.max(most, inside);
        await wait(2);
        inside -= 1;
        await lock.release();
      }),
    );
    expect(most).toBe(1);
    expect(readdirSync(join(out, ".."))).toEqual([]);
  });

  test("a command whose lock was taken away does not show its pack", async () => {
    const out = join(scratchFolder(), "_site");
    await pack(out, "earlier");
    const late = replaceOutput({ outDir: out, waitMs: 0, ...quiet }, async (stage) => {
      await pack(stage, "late");
      rmSync(`${out}.lock`, { recursive: true });
    });
    await expect(late).rejects.toThrow("is at work on");
    expect(readFileSync(join(out, "index.html"), "utf8")).toBe("earlier");
  });

  test("two pack processes at once leave one whole pack and nothing beside it", {
    timeout: 60_000,
  }, async () => {
    const folder = scratchFolder();
    writeFiles(join(folder, "content"), { "areas/a/area.json": '{"name": "A", "summary": "a"}' });
    const args = ["--content", join(folder, "content"), "--out", join(folder, "_site")];
    const env = { SOURCE_DATE_EPOCH: "1774854000", LOCK_WAIT_MS: "30000" };
    const runs = [1, 2].map(() => ended(tsProcess("stubPackProcess.ts", args, env)));
    const results = await Promise.all(runs);
    expect(results.map(({ status, err }) => ({ status, err }))).toEqual([
      { status: 0, err: "" },
      { status: 0, err: "" },
    ]);
    expect(readdirSync(folder).sort()).toEqual(["_site", "content"]);
    await runStubPack([...args.slice(0, 2), "--out", join(folder, "alone")], { env });
    expect(digestOf(join(folder, "_site"))).toBe(digestOf(join(folder, "alone")));
  });
});

/** A small generator of numbers 0..1 from a seed (Park and Miller 1988, minimal standard). */
function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 16807) % 2147483647;
    return state / 2147483647;
  };
}

describe("a command killed at any moment leaves a whole pack, in its place or put back by the next command", () => {
  test("while it replaces a folder over and over, killed at 25 seeded moments", {
    timeout: 400_000,
  }, async () => {
    const random = seeded(20260404);
    let besides = 0;
    for (let i = 0; i < 25; i += 1) {
      const folder = scratchFolder();
      const out = join(folder, "_site");
      const child = tsProcess("replaceForever.ts", [out]);
      await said(child, "ready");
      await wait(random() * 40);
      child.kill("SIGKILL");
      await once(child, "exit");
      if (readdirSync(folder).length > 1) besides += 1;
      await restoreOutput(out);
      const pages = filesBelow(out).filter((name) => name.endsWith(".html"));
      const rounds = new Set(pages.map((name) => readFileSync(join(out, name), "utf8")));
      expect(pages.length).toBe(8);
      expect(rounds.size).toBe(1);
      expect(readdirSync(folder)).toEqual(["_site"]);
      const next = await lockOutput(out, 0);
      await next.release();
    }
    // the moments did fall into the middle of the work, so that there was something to put right
    expect(besides).toBeGreaterThan(5);
  });

  test("while it builds a pack, killed at 8 seeded moments", { timeout: 400_000 }, async () => {
    const random = seeded(20271104);
    const folder = scratchFolder();
    const out = join(folder, "_site");
    writeFiles(join(folder, "content"), { "areas/a/area.json": '{"name": "A", "summary": "a"}' });
    const args = ["--content", join(folder, "content"), "--out", out];
    await runStubPack(args, { env: { SOURCE_DATE_EPOCH: "1" } });
    const earlier = digestOf(out);
    cpSync(out, join(folder, "copy"), { recursive: true });
    await runStubPack(args, { env: { SOURCE_DATE_EPOCH: "2" } });
    const later = digestOf(out);
    rmSync(out, { recursive: true });
    renameSync(join(folder, "copy"), out);
    for (let i = 0; i < 8; i += 1) {
      const child = tsProcess("stubPackProcess.ts", args, { SOURCE_DATE_EPOCH: "2" });
      const exit = once(child, "exit");
      await said(child, "Lay out pages");
      await wait(random() * 350);
      child.kill("SIGKILL");
      await exit;
      await restoreOutput(out);
      expect([earlier, later]).toContain(digestOf(out));
    }
  });
});
