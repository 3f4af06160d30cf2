import { describe, expect, test } from "vitest";
import { commandLine, optionsText } from "../scripts/commandLine.ts";
import { UsageError } from "../scripts/UsageError.ts";

const known = { content: "DIR", area: "ID", "as-of": "INSTANT" };

describe("arguments of a command", () => {
  test("options take the next word or the text after an equals sign", () => {
    expect(commandLine(["--content", "my content", "--as-of=2027-01-01T00:00:00Z"], known)).toEqual({
      options: { content: "my content", "as-of": "2027-01-01T00:00:00Z" },
      words: [],
      help: false,
    });
  });

  test("words without an option are kept in order, and a word may follow a double hyphen", () => {
    expect(commandLine(["site", "--content", "c", "--", "--north"], known, 2).words).toEqual([
      "site",
      "--north",
    ]);
  });

  test("help is asked for", () => {
    expect(commandLine(["-h"], known).help).toBe(true);
  });

  test.each([
    [["--contnet", "x"], "option --contnet is not known; did you mean --content?"],
    [["--asof", "x"], "did you mean --as-of?"],
    [["-area", "x"], "option -area is not known; did you mean --area?"],
    [["--zzzz"], "known options: [--content DIR] [--area ID] [--as-of INSTANT]"],
    [["--area"], "--area needs a value: --area ID"],
    [["--area="], "--area needs a value: --area ID"],
    [["--area", "--content", "x"], "--area needs a value: --area ID"],
    [["--area", "a", "--area", "b"], "--area is given twice"],
    [["stray"], '"stray" is one word too many'],
    [["--__proto__", "x"], "option --__proto__ is not known"],
  ])("%j is wrong usage", (args, message) => {
    expect(() => commandLine(args, known)).toThrow(UsageError);
    expect(() => commandLine(args, known)).toThrow(message);
  });

  test("the options of a command are told in one line", () => {
    expect(optionsText(known)).toBe("[--content DIR] [--area ID] [--as-of INSTANT]");
  });
});
