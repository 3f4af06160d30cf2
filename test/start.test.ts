import { spawnSync } from "node:child_process";
import { cpSync, mkdirSync, readdirSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterEach, beforeEach, describe, expect, test } from "vitest";

const project = fileURLToPath(new URL("..", import.meta.url));
const SLOW_MS = 60_000;

describe("a command started from one file", () => {
  let folder: string;
  beforeEach(async () => {
    folder = await mkdtemp(join(tmpdir(), "start-"));
    for (const name of ["scripts", "node_modules"]) mkdirSync(join(folder, name));
    cpSync(join(project, "scripts", "start.mjs"), join(folder, "scripts", "start.mjs"));
    for (const name of ["esbuild", "tsx"]) {
      symlinkSync(join(project, "node_modules", name), join(folder, "node_modules", name), "dir");
    }
    writeFileSync(join(folder, "node_modules", ".package-lock.json"), "{}");
    writeFileSync(join(folder, "package.json"), '{ "type": "module" }');
    write("greet.ts", 'import { word } from "./word.ts";\nconsole.log(word, process.argv.slice(2).join());');
    write("word.ts", 'export const word: string = "hello";');
  });
  afterEach(() => rm(folder, { recursive: true, force: true }));

  const write = (name: string, text: string): void => writeFileSync(join(folder, "scripts", name), text);
  const cache = (): string => join(folder, "node_modules", ".cache", "leelight");
  const run = (env: Record<string, string> = {}) =>
    spawnSync(process.execPath, [join(folder, "scripts", "start.mjs"), "greet", "--to", "you"], {
      env: { ...process.env, ...env },
      encoding: "utf8",
    });

  test(
    "gets its arguments, and follows a change of any script, of what is installed, and a broken copy",
    () => {
      expect(run().stdout).toBe("hello --to,you\n");
      expect(readdirSync(cache())).toHaveLength(1);
      expect(run().stdout).toBe("hello --to,you\n");
      write("word.ts", 'export const word: string = "good morning";');
      expect(run().stdout).toBe("good morning --to,you\n");
      expect(readdirSync(cache())).toHaveLength(2);
      writeFileSync(join(folder, "node_modules", ".package-lock.json"), '{ "packages": {} }');
      expect(run().stdout).toBe("good morning --to,you\n");
      expect(readdirSync(cache())).toHaveLength(3);
      for (const name of readdirSync(cache())) writeFileSync(join(cache(), name), "console.log('old')");
      expect(run().stdout).toBe("good morning --to,you\n");
    },
    SLOW_MS,
  );

  test(
    "knows the place of its source, and runs from its files where no copy can be kept",
    () => {
      write("greet.ts", "console.log(import.meta.url.slice(-16));");
      expect(run().stdout).toBe("scripts/greet.ts\n");
      expect(run({ LEELIGHT_UNBUNDLED: "1" }).stdout).toBe("scripts/greet.ts\n");
      rmSync(join(folder, "node_modules", ".cache"), { recursive: true });
      writeFileSync(join(folder, "node_modules", ".cache"), "a file where the folder should be");
      expect(run().stdout).toBe("scripts/greet.ts\n");
    },
    SLOW_MS,
  );

  test(
    "an error of the command is the command's own, not taken for a copy that can not be made",
    () => {
      write("greet.ts", 'console.log("once");\nthrow new Error("went wrong");');
      const { status, stdout, stderr } = run();
      expect([status, stdout]).toEqual([1, "once\n"]);
      expect(stderr).toContain("went wrong");
    },
    SLOW_MS,
  );
});
