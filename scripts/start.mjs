import { createHash } from "node:crypto";
import { mkdirSync, readdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";

// Starts a command, `node scripts/start.mjs pack --out DIR`, from one file that holds all of its program. Reading and
// translating 400 files takes longer than most of what they do; so they are put together once, and again when any of them,
// what is installed, or Node changes. Where that is not possible the command runs from its files.
const command = process.argv.splice(2, 1)[0] ?? "";
const scripts = dirname(fileURLToPath(import.meta.url));
const root = dirname(scripts);
const entry = join(scripts, `${command}.ts`);
const cache = join(root, "node_modules", ".cache", "leelight");
const DAY_MS = 86_400_000;

const bundle = process.env.LEELIGHT_UNBUNDLED ? null : await bundled().catch(() => null);
// What was computed by this very program may be kept (scripts/publish/computedStore.ts).
if (bundle === null) delete process.env.LEELIGHT_PROGRAM;
else process.env.LEELIGHT_PROGRAM = basename(bundle, ".mjs");
if (bundle === null) (await import("tsx/esm/api")).register();
await import(pathToFileURL(bundle ?? entry).href);

/** The file to run; its name is made from all it is made of, and its first line from all that follows. */
async function bundled() {
  const file = join(cache, `${command}-${sourcesHash()}.mjs`);
  if (isWhole(file)) return file;
  const text = await built();
  mkdirSync(cache, { recursive: true });
  const half = `${file}.${process.pid}`;
  writeFileSync(half, `// ${hashOf(text)}\n${text}`);
  renameSync(half, file);
  for (const name of readdirSync(cache)) {
    const other = join(cache, name);
    if (other !== file && Date.now() - statSync(other).mtimeMs > DAY_MS) rmSync(other, { force: true });
  }
  return file;
}

function isWhole(file) {
  try {
    const text = readFileSync(file, "utf8");
    const end = text.indexOf("\n");
    return text.slice(0, end) === `// ${hashOf(text.slice(end + 1))}`;
  } catch {
    return false;
  }
}

function sourcesHash() {
  const sources = readdirSync(scripts, { recursive: true }).filter((name) => /\.(ts|mjs|json)$/.test(name));
  const files = sources.sort().map((name) => join(scripts, name));
  // npm writes down here what it installed
  files.push(join(root, "package.json"), join(root, "node_modules", ".package-lock.json"));
  const hash = createHash("sha256").update(`${process.version} ${process.arch} ${root}`);
  for (const file of files) hash.update(`\0${file}\0`).update(readFileSync(file));
  return hash.digest("hex").slice(0, 32);
}

function hashOf(text) {
  return createHash("sha256").update(text).digest("hex");
}

async function built() {
  const { build } = await import("esbuild");
  const { outputFiles } = await build({
    entryPoints: [entry],
    bundle: true,
    write: false,
    platform: "node",
    format: "esm",
    target: "node20",
    // what Eleventy loads by itself has to be the same module; the rest of its kind finds files beside itself
    external: ["@11ty/eleventy", "nunjucks", "markdown-it", "sharp", "tsx", "esbuild"],
    banner: {
      js: 'import { createRequire as requireFrom } from "node:module"; const require = requireFrom(import.meta.url);',
    },
    plugins: [{ name: "own-place", setup: keepOwnPlace }],
    logLevel: "silent",
  });
  return outputFiles[0].text;
}

/** A script that asks where it stands is told the place of its source. */
function keepOwnPlace({ onLoad }) {
  onLoad({ filter: /\.ts$/ }, ({ path }) => {
    if (!path.startsWith(scripts)) return undefined;
    const contents = readFileSync(path, "utf8");
    if (!contents.includes("import.meta")) return undefined;
    const url = JSON.stringify(pathToFileURL(path).href);
    return { contents: contents.replaceAll("import.meta.url", url), loader: "ts" };
  });
}
