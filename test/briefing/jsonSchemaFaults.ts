type Schema = Record<string, unknown>;

/**
 * Where a value breaks a JSON Schema (draft 2020-12), as far as the schemas of this project go: "path: keyword".
 *
 * @throws {RangeError} a keyword that is not understood here, so that nothing passes unread
 */
export function jsonSchemaFaults(schema: Schema, value: unknown, root: Schema = schema, path = ""): string[] {
  return Object.entries(schema).flatMap(([keyword, rule]) => {
    if (["$schema", "title", "description", "$defs", "default"].includes(keyword)) return [];
    const check = CHECKS[keyword];
    if (check === undefined) throw new RangeError(`the keyword ${keyword} is not understood`);
    const found = check(rule, value, { schema, root, path });
    return typeof found === "boolean" ? (found ? [] : [`${path}: ${keyword}`]) : found;
  });
}

interface At {
  schema: Schema;
  root: Schema;
  path: string;
}

type Check = (rule: unknown, value: unknown, at: At) => boolean | string[];

const isObject = (value: unknown): value is Schema =>
  typeof value === "object" && value !== null && !Array.isArray(value);

const CHECKS: Record<string, Check> = {
  $ref: (rule, value, { root, path }) => {
    const target = String(rule)
      .slice(2)
      .split("/")
      .reduce((part: unknown, key) => (part as Schema)[key], root);
    return jsonSchemaFaults(target as Schema, value, root, path);
  },
  type: (rule, value, at) => {
    if (Array.isArray(rule)) return rule.some((one) => CHECKS.type!(one, value, at) === true);
    if (rule === "integer") return Number.isInteger(value);
    if (rule === "null") return value === null;
    if (rule === "array") return Array.isArray(value);
    return rule === "object" ? isObject(value) : typeof value === rule;
  },
  const: (rule, value) => value === rule,
  enum: (rule, value) => (rule as unknown[]).includes(value),
  anyOf: (rule, value, { root, path }) =>
    (rule as Schema[]).some((option) => jsonSchemaFaults(option, value, root, path).length === 0),
  minimum: (rule, value) => typeof value !== "number" || value >= Number(rule),
  maximum: (rule, value) => typeof value !== "number" || value <= Number(rule),
  exclusiveMaximum: (rule, value) => typeof value !== "number" || value < Number(rule),
  minLength: (rule, value) => typeof value !== "string" || value.length >= Number(rule),
  pattern: (rule, value) => typeof value !== "string" || new RegExp(String(rule), "u").test(value),
  minItems: (rule, value) => !Array.isArray(value) || value.length >= Number(rule),
  maxItems: (rule, value) => !Array.isArray(value) || value.length <= Number(rule),
  prefixItems: (rule, value, { root, path }) =>
    !Array.isArray(value) ||
    (rule as Schema[]).flatMap((item, i) => jsonSchemaFaults(item, value[i], root, `${path}[${i}]`)),
  items: (rule, value, { schema, root, path }) =>
    !Array.isArray(value) ||
    value
      .slice((schema.prefixItems as unknown[] | undefined)?.length ?? 0)
      .flatMap((part, i) => jsonSchemaFaults(rule as Schema, part, root, `${path}[${i}]`)),
  required: (rule, value) => !isObject(value) || (rule as string[]).every((key) => key in value),
  properties: (rule, value, { root, path }) =>
    !isObject(value) ||
    Object.entries(rule as Record<string, Schema>).flatMap(([key, part]) =>
      key in value ? jsonSchemaFaults(part, value[key], root, `${path}.${key}`) : [],
    ),
  propertyNames: (rule, value, { root, path }) =>
    !isObject(value) ||
    Object.keys(value).flatMap((key) => jsonSchemaFaults(rule as Schema, key, root, path)),
  additionalProperties: (rule, value, { schema, root, path }) => {
    if (!isObject(value)) return true;
    const others = Object.keys(value).filter((key) => !(key in ((schema.properties as Schema) ?? {})));
    if (typeof rule === "boolean") return rule || others.length === 0;
    return others.flatMap((key) => jsonSchemaFaults(rule as Schema, value[key], root, `${path}.${key}`));
  },
};
