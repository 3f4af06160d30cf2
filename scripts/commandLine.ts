import { nearestWord } from "./content/nearestWord.ts";
import { UsageError } from "./UsageError.ts";

/** Options a command knows: the name without dashes, and what its value is called. Every option takes a value. */
export type OptionList = Readonly<Record<string, string>>;

export interface CommandLine {
  /** Values by option name; an option that was not given is absent. */
  options: Record<string, string>;
  /** Words that belong to no option, in order. */
  words: string[];
  /** "--help" or "-h" was given. */
  help: boolean;
}

/**
 * Arguments of a command, read strictly: `--name VALUE` or `--name=VALUE`, each option once; after `--` everything is a
 * word. A value may start with a single hyphen ("-45.03"), not with two.
 *
 * @param known     options of the command, such as `{ content: "DIR", area: "ID" }`
 * @param mostWords how many words without an option the command takes
 * @throws {UsageError} unknown option (with the nearest known one), missing or empty value, option given twice, too many words
 */
export function commandLine(args: readonly string[], known: OptionList, mostWords = 0): CommandLine {
  const line: CommandLine = { options: {}, words: [], help: false };
  let wordsOnly = false;
  for (let i = 0; i < args.length; i++) {
    const arg = args[i]!;
    if (wordsOnly || !arg.startsWith("-") || arg === "-") {
      line.words.push(arg);
    } else if (arg === "--") {
      wordsOnly = true;
    } else if (arg === "--help" || arg === "-h") {
      line.help = true;
    } else {
      const [, name, inline] = /^--?([^=]*)(?:=([\s\S]*))?$/.exec(arg)!;
      const option = knownOption(arg, name ?? "", known);
      if (Object.hasOwn(line.options, option)) throw new UsageError(`--${option} is given twice`);
      const value = inline ?? args[++i];
      if (value === undefined || value === "" || (inline === undefined && value.startsWith("--"))) {
        throw new UsageError(`--${option} needs a value: --${option} ${known[option]}`);
      }
      line.options[option] = value;
    }
  }
  if (line.words.length > mostWords) {
    throw new UsageError(`${JSON.stringify(line.words[mostWords])} is one word too many`);
  }
  return line;
}

/** "--content DIR --area ID", for the line that says how to call a command. */
export function optionsText(known: OptionList): string {
  return Object.entries(known)
    .map(([name, value]) => `[--${name} ${value}]`)
    .join(" ");
}

function knownOption(arg: string, name: string, known: OptionList): string {
  if (arg.startsWith("--") && Object.hasOwn(known, name)) return name;
  const near = nearestWord(name, Object.keys(known));
  const hint = near ? `did you mean --${near}?` : `known options: ${optionsText(known) || "none"}`;
  throw new UsageError(`option ${arg.split("=")[0]} is not known; ${hint}`);
}
