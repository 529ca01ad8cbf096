/** The tools of the sheet, with icon and word, and how it lies, in words; beside the paper, where the host has room. */
import { type Signal, useComputed, useSignal, useSignalEffect } from "@preact/signals";
import type { JSX } from "preact";
import { Fragment } from "preact";
import { SheetIcon, type SheetIconName } from "./icons.tsx";
import { viewWords } from "./sheetWords.ts";
import type { SheetMode, SheetView } from "./types.ts";
import { saySheet } from "./words.ts";

export type SheetTool = "flip" | "turn" | "closer" | "pin" | "pencil" | "ruler" | "legend";
export interface SheetToolsProps {
  readonly view: Signal<SheetView>;
  readonly mode: Signal<SheetMode>;
  /** Which tools there are, in their order. */
  readonly tools: readonly SheetTool[];
  readonly legend?: Signal<boolean>;
  /** Lines drawn: with one the pencil can be rubbed out. */
  readonly pencilLines?: number;
  /** A question to be answered on the paper; stands in place of how it lies. */
  readonly asks?: string | undefined;
  readonly onView?: (view: SheetView, done: boolean) => void;
  readonly onRubOut?: () => void;
}
const TOLD_AFTER_MS = 160;
const TURN_RAD = Math.PI / 12;
const NEARER = 2;
/** The tools that stay pressed, and what a finger on the paper does meanwhile. */
const MODE_OF = { pin: "pin", pencil: "pencil", ruler: "ruler" } as const;

function Tool(props: {
  readonly icon: SheetIconName;
  readonly word: string;
  readonly pressed?: boolean;
  readonly help?: string;
  readonly onClick: () => void;
}) {
  return (
    <button
      type="button"
      class="tool"
      onClick={props.onClick}
      {...(props.pressed === undefined ? {} : { "aria-pressed": props.pressed })}
      {...(props.help ? { title: props.help } : {})}
    >
      <SheetIcon name={props.icon} />
      <span>{props.word}</span>
    </button>
  );
}

/** How the sheet lies, told when it has come to rest: neither eyes nor ears want a count of degrees. */
function useLies(view: Signal<SheetView>): string {
  const words = useSignal(viewWords(view.peek()));
  useSignalEffect(() => {
    const now = viewWords(view.value);
    const timer = setTimeout(() => {
      words.value = now;
    }, TOLD_AFTER_MS);
    return () => clearTimeout(timer);
  });
  return words.value;
}

export function SheetTools(props: SheetToolsProps) {
  const { view, mode, legend } = props;
  const change = (part: Partial<SheetView>) => {
    view.value = { ...view.peek(), ...part };
    props.onView?.(view.peek(), true);
  };
  const lies = useLies(view);
  const near = useComputed(() => view.value.scale > 1.05).value;
  const tools: Readonly<Record<SheetTool, () => JSX.Element | null>> = {
    flip: () => <Tool icon="flip" word={saySheet("flip")} onClick={() => change({ flipped: !view.peek().flipped })} />,
    turn: () => (
      <Tool
        icon="turn"
        word={saySheet("turn")}
        help={saySheet("turnHelp")}
        onClick={() => change({ turnRad: view.peek().turnRad + TURN_RAD })}
      />
    ),
    closer: () => (
      <Tool
        icon="closer"
        word={saySheet(near ? "whole" : "closer")}
        onClick={() => change(near ? { scale: 1, panX: 0, panY: 0 } : { scale: NEARER })}
      />
    ),
    pin: () => modeTool("pin", saySheet("pinHelp")),
    pencil: () => modeTool("pencil"),
    ruler: () => modeTool("ruler"),
    legend: () =>
      legend ? (
        <Tool
          icon="legend"
          word={saySheet("legend")}
          pressed={legend.value}
          onClick={() => {
            legend.value = !legend.value;
          }}
        />
      ) : null,
  };
  function modeTool(tool: keyof typeof MODE_OF, help?: string) {
    const pressed = mode.value === MODE_OF[tool];
    const onClick = () => {
      mode.value = pressed ? "turn" : MODE_OF[tool];
    };
    return (
      <Tool icon={tool} word={saySheet(`${tool}`)} pressed={pressed} {...(help ? { help } : {})} onClick={onClick} />
    );
  }
  return (
    <div class="sheet-tools">
      <p class={props.asks ? "sheet-asks" : "sheet-lies"} role="status">
        {props.asks ?? lies}
      </p>
      <div class="sheet-buttons">
        {props.tools.map((tool) => (
          <Fragment key={tool}>{tools[tool]()}</Fragment>
        ))}
        {mode.value === "pencil" && props.pencilLines ? (
          <Tool icon="rubOut" word={saySheet("rubOut")} onClick={() => props.onRubOut?.()} />
        ) : null}
      </div>
    </div>
  );
}
