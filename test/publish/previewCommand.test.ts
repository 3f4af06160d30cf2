import { once } from "node:events";
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { createServer } from "node:net";
import { join } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import { fileURLToPath } from "node:url";
import { expect, onTestFinished, test, vi } from "vitest";
import { filesBelow, scratchFolder, writeFiles } from "./scratchFolder.ts";
import { tsProcess } from "./tsProcess.ts";

vi.setConfig({ testTimeout: 60_000 });

let port = 0;

const project = fileURLToPath(new URL("../../", import.meta.url));

const area = {
  name: "Larch Valley",
  summary: "A valley.",
  centre: { lat: -45.0312, lon: 168.6626 },
  timezone: "Pacific/Auckland",
  elevationM: 640,
  asOf: "2026-03-30T20:00:00+13:00",
};

async function freePort(): Promise<number> {
  const server = createServer().listen(0, "localhost");
  await once(server, "listening");
  const address = server.address();
  server.close();
  await once(server, "close");
  return address !== null && typeof address === "object" ? address.port : 0;
}

async function until(what: string, holds: () => boolean | Promise<boolean>): Promise<void> {
  for (let tries = 0; tries < 300; tries += 1) {
    if (await holds()) return;
    await wait(200);
  }
  throw new Error(`waited a minute in vain: ${what}`);
}

async function served(path: string): Promise<string> {
  return await fetch(`http://localhost:${port}/${path}`)
    .then((response) => response.text())
    .catch(() => "");
}

function packState(): string[] {
  const site = join(project, "_site");
  return existsSync(site) ? filesBelow(site).map((path) => path + readFileSync(join(site, path)).length) : [];
}

test("a preview waits for good content, shows each change, keeps its pages through a mistake, leaves the pack alone", {
  timeout: 240_000,
}, async () => {
  const folder = scratchFolder();
  const file = join(folder, "content/areas/larch-valley/area.json");
  const write = (facts: object) => writeFileSync(file, JSON.stringify(facts));
  writeFiles(folder, { "content/areas/larch-valley/area.json": JSON.stringify({ ...area, name: 5 }) });
  const before = packState();
  port = await freePort();
  const args = ["--content", join(folder, "content"), "--port", String(port)];
  const preview = tsProcess("../../scripts/preview.ts", args);
  let words = "";
  preview.stdout?.on("data", (chunk) => (words += String(chunk)));
  preview.stderr?.on("data", (chunk) => (words += String(chunk)));
  onTestFinished(async () => {
    if (preview.exitCode !== null) return;
    preview.kill("SIGKILL");
    await once(preview, "exit");
  });

  await until("the first problem is told", () => words.includes("Waiting for a change"));
  expect(words).toContain("area.json: name [value-type]");

  write(area);
  await until("the page is served", async () => (await served("index.html")).includes("Larch Valley"));
  expect(await served("index.html")).not.toContain("Content-Security-Policy");

  write({ ...area, name: "Tamarack Valley" });
  await until("the change is shown", async () => (await served("index.html")).includes("Tamarack Valley"));

  words = "";
  write({ ...area, name: 5 });
  await until("the second problem is told", () => words.includes("The pages stay as they were"));
  expect(await served("index.html")).toContain("Tamarack Valley");

  write({ ...area, name: "Spruce Valley" });
  await until("the mended page is shown", async () => (await served("index.html")).includes("Spruce Valley"));
  expect(await served("assets/leelight.css")).toContain("@page");
  expect(packState()).toEqual(before);

  preview.kill("SIGINT");
  const [status] = await once(preview, "exit");
  expect(status).toBe(0);
});

test.each([
  [["--port", "0"], "--port must be 1 to 65535"],
  [["--out", "x"], "option --out is not known"],
])("a preview called with %j ends with status 2", async (args, words) => {
  const preview = tsProcess("../../scripts/preview.ts", args);
  let err = "";
  preview.stderr?.on("data", (chunk) => (err += String(chunk)));
  const [status] = await once(preview, "close");
  expect(status).toBe(2);
  expect(err).toContain(words);
});
