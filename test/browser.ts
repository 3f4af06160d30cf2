import { accessSync, constants } from "node:fs";
import { pathToFileURL } from "node:url";
import { type Browser, chromium, type Page } from "playwright-core";

export type { Browser, Page };

const INSTALLED = ["/usr/bin/chromium", "/usr/bin/google-chrome"];

/**
 * A Chromium without a window: the one that CHROME_PATH names, else one that is installed, else the one that came with the
 * development packages.
 *
 * @throws {Error} CHROME_PATH names no program, or no browser is found: a test that needs one is never skipped
 */
export async function launchBrowser(): Promise<Browser> {
  const { executablePath, args } = await browserProgram();
  return await chromium.launch({ executablePath, args, headless: true });
}

async function browserProgram(): Promise<{ executablePath: string; args: string[] }> {
  const args = ["--no-sandbox", "--disable-dev-shm-usage"];
  const named = process.env.CHROME_PATH;
  if (named !== undefined && named !== "") {
    if (!isProgram(named)) throw new Error(`CHROME_PATH must name a program that can be run, found ${named}`);
    return { executablePath: named, args };
  }
  const installed = INSTALLED.find(isProgram);
  if (installed !== undefined) return { executablePath: installed, args };
  // the package unpacks the libraries it needs only when it believes to run on the service it was made for
  process.env.AWS_LAMBDA_JS_RUNTIME ??= "nodejs20.x";
  const { default: packaged } = await import("@sparticuz/chromium");
  const executablePath = await packaged.executablePath();
  if (!isProgram(executablePath)) {
    throw new Error("No Chromium found. Install one, or name it with CHROME_PATH.");
  }
  // not the arguments of the package: one process for all pages falls over, and web security must stay on
  return { executablePath, args: [...args, "--no-zygote", "--disable-gpu", "--disable-gpu-rasterization"] };
}

function isProgram(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

export interface OpenPage {
  page: Page;
  /** addresses the page asked for, itself included */
  requests: string[];
  /** what the browser complained about */
  errors: string[];
  close(): Promise<void>;
}

/** Opens files of a folder as from a memory stick: no network, scripts on or off, a screen of the given width. */
export async function openFromDisk(
  browser: Browser,
  options: { scripts: boolean; widthPx: number },
): Promise<OpenPage & { show(file: string): Promise<void> }> {
  const context = await browser.newContext({
    javaScriptEnabled: options.scripts,
    viewport: { width: options.widthPx, height: 900 },
    offline: true,
    locale: "en-GB",
    timezoneId: "UTC",
  });
  const page = await context.newPage();
  const requests: string[] = [];
  const errors: string[] = [];
  page.on("request", (request) => requests.push(request.url()));
  page.on("requestfailed", (request) =>
    errors.push(`request failed: ${request.url()} ${request.failure()?.errorText ?? ""}`),
  );
  page.on("console", (message) => {
    if (message.type() === "error") errors.push(`console: ${message.text()}`);
  });
  page.on("pageerror", (error) => errors.push(`script: ${error.message}`));
  return {
    page,
    requests,
    errors,
    async show(file) {
      requests.length = 0;
      errors.length = 0;
      await page.goto(pathToFileURL(file).href, { waitUntil: "load" });
    },
    close: () => context.close(),
  };
}
