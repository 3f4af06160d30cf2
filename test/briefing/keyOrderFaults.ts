/** As much of a schema as the order of keys needs. */
interface SchemaNode {
  def: { type: string; innerType?: SchemaNode; element?: SchemaNode };
  shape?: Record<string, SchemaNode>;
}

/** Objects whose keys do not stand in the order of the schema, or lack one: told by path, one fault for each kind of place. */
export function keyOrderFaults(schema: unknown, value: unknown): string[] {
  const faults = new Set<string>();
  compare(schema as SchemaNode, value, "", faults);
  return [...faults];
}

function compare(schema: SchemaNode, value: unknown, path: string, faults: Set<string>): void {
  if (value === null || value === undefined) return;
  const { type, innerType, element } = schema.def;
  if (innerType !== undefined) compare(innerType, value, path, faults);
  else if (type === "array" && element !== undefined && Array.isArray(value)) {
    for (const part of value) compare(element, part, `${path}[]`, faults);
  } else if (schema.shape !== undefined) {
    const expected = Object.keys(schema.shape).join(" ");
    const found = Object.keys(value).join(" ");
    if (found !== expected) faults.add(`${path}: keys ${found}, expected ${expected}`);
    for (const [key, part] of Object.entries(schema.shape)) {
      compare(part, (value as Record<string, unknown>)[key], path === "" ? key : `${path}.${key}`, faults);
    }
  }
}
