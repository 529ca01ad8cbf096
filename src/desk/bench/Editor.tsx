/** The text on its sheet: lines numbered in the margin, places with findings marked there by form. */
import { useEffect, useState } from "preact/hooks";
import type { Finding } from "#core/lesson/findings.ts";
import { isTooLarge, LARGEST_BYTES } from "#core/lesson/largest.ts";
import { linesIn, offsetOf, placeAt, type TextPlace } from "./caret.ts";
import { kBOf } from "./files.ts";
import { Sign } from "./Sign.tsx";
import { sayBench } from "./words.ts";

/** Height of a line, CSS px; the style sheet takes it from here. */
const LINE_PX = 24;
const PADDING_PX = 14;
/** Only the lines about those in sight are numbered: more than any window shows. */
const NUMBERED_LINES = 160;

/** Puts the caret at a place, with the line in sight. */
export function caretTo(area: HTMLTextAreaElement, place: TextPlace): void {
  const offset = offsetOf(area.value, place);
  area.setSelectionRange(offset, offset);
  // Taking the focus anew makes browsers bring the caret into sight along its line.
  area.blur();
  area.focus();
  const top = (place.line - 1) * LINE_PX;
  const isInSight = top >= area.scrollTop && top + 2 * LINE_PX <= area.scrollTop + area.clientHeight;
  if (!isInSight) area.scrollTop = top - area.clientHeight / 3;
}

const worst = (findings: readonly Finding[]): Map<number, Finding["severity"]> => {
  const byLine = new Map<number, Finding["severity"]>();
  for (const { line, severity } of findings) if (byLine.get(line) !== "error") byLine.set(line, severity);
  return byLine;
};

/** The numbers from a line on. */
const numbersFrom = (first: number, lines: number): string =>
  Array.from({ length: Math.max(0, Math.min(NUMBERED_LINES, lines - first + 1)) }, (_, i) => first + i).join("\n");

interface MarginProps {
  readonly lines: number;
  readonly caretLine: number;
  readonly findings: readonly Finding[];
  readonly scrollPx: number;
}
/** For the eye alone: the list says the same. */
function Margin({ lines, caretLine, findings, scrollPx }: MarginProps) {
  const top = (line: number) => ({ top: `${PADDING_PX + (line - 1) * LINE_PX}px` });
  const first = Math.max(1, Math.floor(scrollPx / LINE_PX) - 20);
  return (
    <div class="margin" aria-hidden="true">
      <div style={{ transform: `translateY(${-scrollPx}px)` }}>
        <span class="caret-line" style={top(caretLine)} />
        <pre style={top(first)}>{numbersFrom(first, lines)}</pre>
        {[...worst(findings)].map(([line, severity]) => (
          <span key={line} class="line-sign" style={top(line)}>
            <Sign severity={severity} />
          </span>
        ))}
      </div>
    </div>
  );
}

interface Props {
  readonly text: string;
  readonly name: string;
  readonly findings: readonly Finding[];
  readonly area: { current: HTMLTextAreaElement | null };
  readonly onType: (text: string) => void;
  /** A text too large to be taken was pasted. */
  readonly onTooLarge: (kB: number) => void;
}

/** Whether a paste would make more of it than a lesson may have; counted in UTF-16 units, which a text has no more of than bytes. */
const lengthAfter = (area: HTMLTextAreaElement, pasted: string): number =>
  area.value.length - (area.selectionEnd - area.selectionStart) + pasted.length;

export function Editor({ text, name, findings, area, onType, onTooLarge }: Props) {
  const [scrollPx, setScrollPx] = useState(0);
  const [caret, setCaret] = useState<TextPlace>({ line: 1, column: 1 });
  const lines = linesIn(text);
  useEffect(() => {
    const onSelection = () => {
      const field = area.current;
      if (field && document.activeElement === field) setCaret(placeAt(field.value, field.selectionEnd));
    };
    document.addEventListener("selectionchange", onSelection);
    return () => document.removeEventListener("selectionchange", onSelection);
  }, [area]);
  const onPaste = (event: ClipboardEvent) => {
    const field = area.current;
    const pasted = event.clipboardData?.getData("text/plain") ?? "";
    if (!field || lengthAfter(field, pasted) <= LARGEST_BYTES) return;
    event.preventDefault();
    onTooLarge(kBOf(lengthAfter(field, pasted)));
  };
  /** A text too large is not laid out, which would hold up the page; what stood there stays, and the caret with it. */
  const onInput = (field: HTMLTextAreaElement) => {
    const { value, selectionStart } = field;
    if (!isTooLarge(value)) {
      onType(value);
      return;
    }
    const at = Math.max(0, selectionStart - (value.length - text.length));
    field.value = text;
    field.setSelectionRange(at, at);
    onTooLarge(kBOf(value.length));
  };
  const style = { "--line": `${LINE_PX}px`, "--text-padding": `${PADDING_PX}px`, "--digits": String(lines).length };
  return (
    <div class="bench-sheet" style={style}>
      <div class="bench-frame">
        <Margin lines={lines} caretLine={Math.min(caret.line, lines)} findings={findings} scrollPx={scrollPx} />
        <textarea
          ref={area}
          id="bench-text"
          aria-label={sayBench("text")}
          aria-describedby="bench-summary"
          value={text}
          wrap="off"
          spellcheck={false}
          autocomplete="off"
          autocapitalize="off"
          onInput={({ currentTarget }) => onInput(currentTarget)}
          onPaste={onPaste}
          onScroll={({ currentTarget }) => setScrollPx(currentTarget.scrollTop)}
          // Letters that are typed are no keys of the page.
          onKeyDown={(event) => event.stopPropagation()}
        />
      </div>
      <p class="bench-foot">
        <bdi>{name || sayBench("unnamed")}</bdi>
        <span>{sayBench("place", caret)}</span>
        <span>{sayBench("size", { kB: kBOf(text.length), most: kBOf(LARGEST_BYTES) })}</span>
      </p>
    </div>
  );
}
