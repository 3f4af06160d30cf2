import { readFile } from "node:fs/promises";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { extname, join, normalize, relative } from "node:path";
import type { Browser } from "../browser.ts";
import { htmlFiles } from "../pageFaults.ts";

const TYPES: Record<string, string> = {
  ".html": "text/html; charset=utf-8",
  ".css": "text/css",
  ".js": "text/javascript",
  ".json": "application/json",
  ".woff2": "font/woff2",
  ".png": "image/png",
  ".jpg": "image/jpeg",
};

/**
 * Faults of a pack on a host that keeps it in a sub-folder, with scripts off: requests that leave the folder or find nothing,
 * and what the browser complains about.
 *
 * @param files paths of the pages to open, all when not given
 */
export async function hostFaults(
  browser: Browser,
  folder: string,
  files = htmlFiles(folder),
): Promise<string[]> {
  const base = "/some/sub-folder/";
  const asked: { path: string; status: number }[] = [];
  const server = createServer(async (request, response) => {
    const path = decodeURIComponent(new URL(request.url ?? "/", "http://host").pathname);
    const file = join(folder, normalize(path.slice(base.length)));
    const body = path.startsWith(base) ? await readFile(file).catch(() => null) : null;
    asked.push({ path, status: body === null ? 404 : 200 });
    response.writeHead(body === null ? 404 : 200, { "content-type": TYPES[extname(file)] ?? "text/plain" });
    response.end(body ?? "");
  });
  await new Promise<void>((done) => server.listen(0, "127.0.0.1", done));
  const origin = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
  const context = await browser.newContext({ javaScriptEnabled: false });
  const faults: string[] = [];
  try {
    const page = await context.newPage();
    page.on("request", (request) => {
      if (!request.url().startsWith(`${origin}${base}`) && !request.url().startsWith("data:"))
        faults.push(`a request to ${request.url().replace(origin, "")}`);
    });
    for (const file of files) {
      asked.length = 0;
      const before = faults.length;
      await page.goto(`${origin}${base}${relative(folder, file)}`, { waitUntil: "load" });
      const lost = asked
        .filter(({ status }) => status !== 200)
        .map(({ path }) => `a request for what is not there: ${path}`);
      const own = [...faults.splice(before), ...lost];
      faults.push(...own.map((fault) => `${relative(folder, file)}: ${fault}`));
    }
  } finally {
    await context.close();
    await new Promise((done) => server.close(done));
  }
  return [...new Set(faults)];
}
