import type { AreaDraft, NamedDraft } from "../areaDraft.ts";
import { localPathProblem } from "../localPath.ts";
import { nearestWord } from "../nearestWord.ts";
import { pageOf } from "../packHref.ts";
import type { Problem } from "../problem.ts";
import { isRemote, type ReadProse } from "../proseFromMarkdown.ts";

const PHOTO = /^photos\/[^/]+\.(jpe?g|png|webp)$/i;
const TEXT_LINK = /^(https?|mailto|tel|geo):/i;

/** Links and images of prose, and the photos that facts name: all must be in the area, and photos must have words. */
export function checkProse(draft: AreaDraft): Problem[] {
  const named: NamedDraft<unknown>[] = [draft.area, ...draft.sites, ...draft.trips, ...draft.cameras];
  return [
    ...named.flatMap(({ prose, proseFile }) => (prose ? proseProblems(prose, proseFile, draft) : [])),
    ...[draft.area, ...draft.sites, ...draft.trips].flatMap(({ file, loose }) =>
      (loose?.photos ?? []).flatMap((photo, i) =>
        photo?.file === undefined
          ? []
          : photoProblems(photo.file, { file, field: `photos.${i}.file` }, draft),
      ),
    ),
  ];
}

interface At {
  file: string;
  field: string;
}

function proseProblems(prose: ReadProse, file: string, draft: AreaDraft): Problem[] {
  const links = prose.links.flatMap(({ target, line }) =>
    linkProblems(target, { file, field: `line ${line}` }, prose.anchors, draft),
  );
  const images = prose.images.flatMap(({ target, alt, line }) => {
    const at = { file, field: `line ${line}` };
    const problems = photoProblems(target, at, draft);
    if (alt.trim() === "") {
      const expected = "words for a reader who can not see the photo";
      const fix = `write them in the brackets: ![what it shows](${target})`;
      problems.push({ ...at, code: "photo-alt", found: `![](${target})`, expected, fix });
    }
    return problems;
  });
  return [...links, ...images];
}

function photoProblems(path: string, at: At, draft: AreaDraft): Problem[] {
  const found = JSON.stringify(path);
  if (isRemote(path)) {
    const expected = "a photo in the folder photos/ of the area; a pack works without a network";
    return [
      {
        ...at,
        code: "photo-remote",
        found: found.slice(0, 80),
        expected,
        fix: "save the photo into photos/ and name it there",
      },
    ];
  }
  const local = localPathProblem(path, at, draft.files);
  if (local) return [local];
  if (PHOTO.test(path)) return [];
  const expected = 'a .jpg, .png or .webp file in photos/, such as "photos/bench.jpg"';
  return [
    { ...at, code: "photo-kind", found, expected, fix: "save the photo as such a file and name it there" },
  ];
}

function linkProblems(target: string, at: At, anchors: readonly string[], draft: AreaDraft): Problem[] {
  if (TEXT_LINK.test(target)) return [];
  const [path = "", anchor] = target.split("#", 2);
  if (path === "") return anchorProblems(anchor ?? "", target, at, anchors);
  const page = pageOf(path);
  const facts = path.replace(/\.md$/, ".json");
  if (page !== null && draft.files.has(facts)) {
    const other = [draft.area, ...draft.sites].find(({ file }) => file === `${draft.shown}/${facts}`);
    return anchor === undefined ? [] : anchorProblems(anchor, target, at, other?.prose?.anchors ?? []);
  }
  const sites = draft.sites.map(({ id }) => `sites/${id}.md`);
  const near = nearestWord(path, ["area.md", ...sites]);
  return [
    {
      ...at,
      code: "link-target",
      found: `a link to ${JSON.stringify(target)}`,
      expected:
        "area.md, sites/<site>.md, #heading, or a whole web address; paths start at the folder of the area",
      fix: near ? `write ${near}` : "correct the link, or write its words without one",
    },
  ];
}

function anchorProblems(anchor: string, target: string, at: At, anchors: readonly string[]): Problem[] {
  if (anchors.includes(anchor)) return [];
  const near = nearestWord(anchor, anchors);
  const found = `a link to ${JSON.stringify(target)}`;
  const expected =
    anchors.length > 0
      ? `a heading: ${anchors.map((name) => `#${name}`).join(", ")}`
      : "a heading of the text";
  return [{ ...at, code: "link-target", found, expected, fix: near ? `write #${near}` : "correct the link" }];
}
