/** The head of a screen that is worked at: the way back to the start page, what it is called, what it is for. */
import { useEffect, useRef } from "preact/hooks";
import { Icon } from "./icons.tsx";

interface WorkHeadProps {
  readonly toStart: string;
  readonly title: string;
  readonly tagline: string;
  readonly class?: string;
}
/** The focus goes to the title as the screen comes up. */
export function WorkHead({ toStart, title, tagline, class: own = "" }: WorkHeadProps) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    scrollTo(0, 0);
    heading.current?.focus({ preventScroll: true });
  }, []);
  return (
    <header class={`work-head ${own}`}>
      <a class="aside" href="#/">
        <Icon name="back" />
        <span>{toStart}</span>
      </a>
      <h1 tabIndex={-1} ref={heading}>
        {title}
      </h1>
      <p class="aside">{tagline}</p>
    </header>
  );
}
