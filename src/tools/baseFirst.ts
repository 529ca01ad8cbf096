/** The style sheet that all others build upon comes first in the built page. */
import type { Plugin } from "vite";

/** The chunk that holds what every screen builds upon; a bundler puts it last, where it would undo the others. */
export const BASE_STYLES = { name: "base", test: /desk\/styles\/(fonts|tokens|base)\.css/ } as const;

const STYLE_LINK = /^[ \t]*<link rel="stylesheet".*\n/gm;

/**
 * @param html the built page, its style sheets one to a line
 * @throws Error where not just one of them is the base
 */
export function withBaseFirst(html: string): string {
  const links = html.match(STYLE_LINK) ?? [];
  const isBase = (link: string) => link.includes(`/${BASE_STYLES.name}-`);
  if (links.filter(isBase).length !== 1) throw new Error(`one base style sheet is wanted among: ${links.join("")}`);
  const inOrder = [...links.filter(isBase), ...links.filter((link) => !isBase(link))];
  return html.replace(STYLE_LINK, () => inOrder.shift()!);
}

export const baseFirst = (): Plugin => ({
  name: "base-first",
  apply: "build",
  transformIndexHtml: { order: "post", handler: withBaseFirst },
});
