import { textWidthMm } from "../../scripts/drawing/svgText.ts";

/** A text of a drawing as a box, millimetres. */
export interface TextBox {
  text: string;
  left: number;
  right: number;
  top: number;
  bottom: number;
}

/** Faults of XML form: tags that do not close, bare signs, ids that stand twice. Empty when the drawing is well formed. */
export function formFaults(svg: string): string[] {
  const faults: string[] = [];
  const open: string[] = [];
  for (const [whole, close, name, attributes = "", empty] of svg.matchAll(
    /<(\/?)([a-zA-Z]+)((?:\s+[\w:-]+="[^"<]*")*)\s*(\/?)>/g,
  )) {
    if (close === "/") {
      if (open.pop() !== name) faults.push(`closes out of turn: ${whole}`);
    } else if (empty !== "/") open.push(name!);
    const names = [...attributes.matchAll(/\s([\w:-]+)=/g)].map((m) => m[1]!);
    if (new Set(names).size !== names.length) faults.push(`an attribute stands twice: ${whole}`);
  }
  if (open.length > 0) faults.push(`never closed: ${open.join(", ")}`);
  const rest = svg.replace(/<\/?[a-zA-Z]+(?:\s+[\w:-]+="[^"<]*")*\s*\/?>/g, "");
  if (/[<>]/.test(rest)) faults.push(`a bare sign in: ${rest.slice(0, 60)}`);
  if (/&(?!(?:amp|lt|gt|quot|#\d+);)/.test(svg)) faults.push("a bare ampersand");
  const ids = [...svg.matchAll(/\sid="([^"]+)"/g)].map((m) => m[1]!);
  if (new Set(ids).size !== ids.length) faults.push(`ids stand twice: ${ids.join(", ")}`);
  for (const [, id] of svg.matchAll(/url\(#([^)]+)\)/g))
    if (!ids.includes(id!)) faults.push(`no pattern ${id}`);
  if (/NaN|undefined|null|Infinity/.test(svg)) faults.push("a value that is none");
  return faults;
}

/** The boxes of all texts, with the wide bound of the letters' width. */
export function textBoxes(svg: string): TextBox[] {
  return [
    ...svg.matchAll(
      /<text[^>]* x="([^"]+)" y="([^"]+)" text-anchor="(\w+)" font-size="([^"]+)"[^>]*>([^<]*)<\/text>/g,
    ),
  ].map(([, x, y, anchor, size, text]) => {
    const height = Number(size);
    const width = textWidthMm(text!, height);
    const left = Number(x) - (anchor === "middle" ? width / 2 : anchor === "end" ? width : 0);
    return {
      text: text!,
      left,
      right: left + width,
      top: Number(y) - 0.76 * height,
      bottom: Number(y) + 0.24 * height,
    };
  });
}

/** Texts that leave the drawing or touch each other. */
export function labelFaults(svg: string): string[] {
  const [, width, height] = /viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(svg) ?? [];
  const boxes = textBoxes(svg);
  const outside = boxes
    .filter(
      (b) =>
        b.left < -0.01 || b.top < -0.01 || b.right > Number(width) + 0.01 || b.bottom > Number(height) + 0.01,
    )
    .map((b) => `outside: ${b.text}`);
  const touching = boxes.flatMap((a, i) =>
    boxes
      .slice(i + 1)
      .filter((b) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom)
      .map((b) => `touching: ${a.text} and ${b.text}`),
  );
  return [...outside, ...touching];
}
