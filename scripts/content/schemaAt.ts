import type { z } from "zod";

/** What the schema of a file kind says about one place in a file. */
export interface FieldRule {
  /** What is expected there, in words; null when the schema does not say. */
  description: string | null;
  /** Keys an object may have there, else empty. */
  keys: string[];
  /** Words a text may be there, else empty. */
  choices: string[];
  /** Whether the key may be left out. */
  isOptional: boolean;
  /** Whether null may stand there. */
  takesNull: boolean;
  type: string;
}

/** The parts of a schema's definition that are looked at here; every kind of schema has some of them. */
interface Definition {
  type: string;
  shape?: Record<string, z.ZodType>;
  element?: z.ZodType;
  items?: z.ZodType[];
  innerType?: z.ZodType;
  valueType?: z.ZodType;
  in?: z.ZodType;
  options?: z.ZodType[];
  discriminator?: string;
  entries?: Record<string, string | number>;
  values?: unknown[];
}

/**
 * Rule at a path of a schema. Where a union leaves the branch open, the value written there decides by its
 * discriminator, else the first branch that has the path is taken.
 *
 * @returns null when no schema stands there, such as under an unknown key
 */
export function schemaAt(schema: z.ZodType, path: readonly PropertyKey[], value: unknown): FieldRule | null {
  const found = descend(schema, path, value);
  return found ? ruleOf(found) : null;
}

function descend(schema: z.ZodType, path: readonly PropertyKey[], value: unknown): z.ZodType | null {
  const [step, ...rest] = path;
  if (step === undefined) return schema;
  const definition = definitionOf(unwrapped(schema).schema);
  const below = valueAt(value, [step]);
  if (definition.options) {
    for (const option of matchingOptions(definition, value)) {
      const found = descend(option, path, value);
      if (found) return found;
    }
    return null;
  }
  const next =
    definition.shape?.[String(step)] ??
    definition.valueType ??
    definition.element ??
    definition.items?.[Number(step)];
  return next ? descend(next, rest, below) : null;
}

function matchingOptions(definition: Definition, value: unknown): z.ZodType[] {
  const { discriminator, options = [] } = definition;
  if (discriminator === undefined) return options;
  const written = valueAt(value, [discriminator]);
  const chosen = options.filter((option) => {
    const key = definitionOf(unwrapped(option).schema).shape?.[discriminator];
    return key !== undefined && ruleOf(key).choices.includes(String(written));
  });
  return chosen.length > 0 ? chosen : options;
}

function ruleOf(schema: z.ZodType): FieldRule {
  const { schema: inner, description, isOptional, takesNull } = unwrapped(schema);
  const { type, shape, options, discriminator } = definitionOf(inner);
  const branches = options?.map(ruleOf) ?? [];
  return {
    description:
      description ?? (branches.map((branch) => branch.description ?? branch.type).join(", or ") || null),
    keys: [...new Set([...Object.keys(shape ?? {}), ...branches.flatMap((branch) => branch.keys)])],
    choices: [
      ...choicesOf(inner),
      ...(discriminator === undefined ? branches.flatMap((b) => b.choices) : []),
    ],
    isOptional,
    takesNull,
    type,
  };
}

/** Words of a discriminator: all that any branch of the union above it takes. */
export function discriminatorChoices(
  schema: z.ZodType,
  path: readonly PropertyKey[],
  value: unknown,
): string[] {
  const union = descend(schema, path.slice(0, -1), value);
  if (!union) return [];
  const key = String(path.at(-1));
  const { options = [] } = definitionOf(unwrapped(union).schema);
  return options.flatMap((option) => {
    const part = definitionOf(unwrapped(option).schema).shape?.[key];
    return part ? ruleOf(part).choices : [];
  });
}

function choicesOf(schema: z.ZodType): string[] {
  const { entries, values } = definitionOf(schema);
  return (entries ? Object.values(entries) : (values ?? [])).map(String);
}

function unwrapped(schema: z.ZodType): {
  schema: z.ZodType;
  description: string | null;
  isOptional: boolean;
  takesNull: boolean;
} {
  let description = schema.description ?? null;
  let isOptional = false;
  let takesNull = false;
  let current = schema;
  for (;;) {
    const definition = definitionOf(current);
    if (definition.type === "optional" || definition.type === "default") isOptional = true;
    if (definition.type === "nullable") takesNull = true;
    const next = definition.innerType ?? definition.in;
    if (!next) return { schema: current, description, isOptional, takesNull };
    current = next;
    description ??= current.description ?? null;
  }
}

function definitionOf(schema: z.ZodType): Definition {
  return schema.def as unknown as Definition;
}

/** The value at a path, or undefined. */
export function valueAt(value: unknown, path: readonly PropertyKey[]): unknown {
  let current = value;
  for (const step of path) {
    if (typeof current !== "object" || current === null || !Object.hasOwn(current, step)) return undefined;
    current = (current as Record<PropertyKey, unknown>)[step];
  }
  return current;
}
