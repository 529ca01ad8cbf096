import { type Document, isMap, isNode, isScalar, type LineCounter, type Node } from "yaml";
import type { At } from "./findings.ts";

export type Path = readonly PropertyKey[];
/** Where things stand in a lesson's file. */
export interface Places {
  /** Of a value; a missing one is placed at its nearest existing parent. */
  value(path: Path): At;
  /** Of a key of the map at `path`. */
  key(path: Path, key: string): At;
}

/** Places in a parsed document, for findings made from values alone. */
export function placesIn(doc: Document, lines: LineCounter): Places {
  const at = (node: Node | null | undefined): At | null => {
    if (!node?.range) return null;
    const { line, col } = lines.linePos(node.range[0]);
    return { line: Math.max(1, line), column: Math.max(1, col) };
  };
  const nodeAt = (path: Path): Node | null => {
    const node = path.length > 0 ? doc.getIn(path, true) : doc.contents;
    return isNode(node) ? node : null;
  };
  const value = (path: Path): At => {
    for (let n = path.length; n > 0; n--) {
      const found = at(nodeAt(path.slice(0, n)));
      if (found) return found;
    }
    return at(doc.contents) ?? { line: 1, column: 1 };
  };
  const key = (path: Path, name: string): At => {
    const map = nodeAt(path);
    const pair = isMap(map)
      ? map.items.find((item) => isScalar(item.key) && String(item.key.value) === name)
      : undefined;
    return (isNode(pair?.key) && at(pair.key)) || value(path);
  };
  return { value, key };
}
