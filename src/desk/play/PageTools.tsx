/** Where one thing is shown at a time: hint at the left of the ladder, sheet at its right. */

import { Icon, type IconName } from "../icons.tsx";
import { say } from "../words/say.ts";
import type { Page, PlayLayout } from "./geometry.ts";
import type { PlayModel } from "./model.ts";

interface PageToolsProps {
  readonly model: PlayModel;
  readonly layout: PlayLayout;
  readonly page: Page;
  /** Help as rows in place of the words. */
  readonly rows: boolean;
  readonly onRows: (on: boolean) => void;
  readonly onSheet: () => void;
}

function PageTool({
  icon,
  words,
  pressed,
  side,
  onPress,
}: {
  readonly icon: IconName;
  readonly words: string;
  readonly pressed: boolean;
  readonly side: "left" | "right";
  readonly onPress: () => void;
}) {
  return (
    <button type="button" class={`page-tool ${side}`} aria-pressed={pressed} onClick={onPress}>
      <Icon name={icon} />
      <span>{words}</span>
    </button>
  );
}

export function PageTools({ model, layout, page, rows, onRows, onSheet }: PageToolsProps) {
  if (model.phase.value !== "play") return null;
  const onPaper = page === "sheet";
  if (onPaper && layout.kind === "phone") return null;
  return (
    <div class={layout.ladder ? "page-tools" : "page-tools low"}>
      {!onPaper && (
        <PageTool
          icon={rows ? "back" : "hint"}
          words={rows ? say("play.words") : say("play.hint")}
          pressed={rows}
          side="left"
          onPress={() => onRows(!rows)}
        />
      )}
      <PageTool
        icon={onPaper ? "back" : "sheet"}
        words={onPaper ? say("play.words") : say("play.sheet")}
        pressed={onPaper}
        side="right"
        onPress={onSheet}
      />
    </div>
  );
}
