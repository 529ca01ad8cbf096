/** Lettering as laid: a layer of its own, about the sheet's middle. */
import type { TextMark } from "#core/chart/types.ts";

export function Letters({ texts, typeScale }: { readonly texts: readonly TextMark[]; readonly typeScale: number }) {
  return (
    <g transform={`scale(${typeScale})`}>
      {texts.map(({ x, y, align, style, text, tone }) => (
        <text
          key={`${style} ${text} ${Math.round(x)} ${Math.round(y)}`}
          class={`letters-${style}${tone ? ` by-${tone}` : ""}`}
          x={(x / typeScale).toFixed(1)}
          y={(y / typeScale).toFixed(1)}
          text-anchor={align}
        >
          {text}
        </text>
      ))}
    </g>
  );
}
