/** The course as a constellation: lessons that are here are stars, the better found the brighter; the next one is ringed. */
import { useMemo } from "preact/hooks";
import { mixHash32 } from "#core/celestial/hash.ts";
import type { Course, CoursePart, CoursePlace } from "./course.ts";
import { figureOf, linesOf, type Place } from "./figures.ts";
import { sayStart } from "./words.ts";

const GROUND_STARS = 420;
/** So many of them glow a little. */
const BRIGHTER = 12;
/** Tints of stars, blue to orange; a dim lamp takes them away. */
const TINTS = 4;
/** Radius of a star and of its glare, px in a field of 372, by dots earned. */
const LOOK = [
  { core: 0, glare: 0 },
  { core: 3, glare: 15 },
  { core: 3.8, glare: 22 },
  { core: 4.7, glare: 31 },
] as const;
const HOLLOW = 5;
const RINGED = 14;
/** Lines stop so far short of a star. */
const SHORT = 13;

const chance = (i: number, which: number) => mixHash32(7919, i, which) / 2 ** 32;

/** Faint stars of the ground, the same on every page. */
function Ground({ radius }: { radius: number }) {
  const stars = useMemo(
    () =>
      Array.from({ length: GROUND_STARS }, (_, i) => {
        const [reach, angle] = [Math.sqrt(chance(i, 1)) * 0.97 * radius, chance(i, 2) * 2 * Math.PI];
        const bright = chance(i, 3) ** 5;
        const place = { cx: (reach * Math.cos(angle)).toFixed(1), cy: (reach * Math.sin(angle)).toFixed(1) };
        return { ...place, r: (0.55 + 0.75 * bright).toFixed(2), opacity: (0.16 + 0.5 * bright).toFixed(2) };
      }),
    [radius],
  );
  return (
    <g class="ground">
      {stars.map((star, i) => (
        <circle key={i} {...star} />
      ))}
      {stars.slice(0, BRIGHTER).map(({ cx, cy }, i) => (
        <g key={i} class={`tint-${i % TINTS}`}>
          <circle class="faint-glare" fill={`url(#glare-${i % TINTS})`} cx={cx} cy={cy} r={7 + 5 * chance(i, 4)} />
          <circle cx={cx} cy={cy} r="1.5" />
        </g>
      ))}
    </g>
  );
}

function Star({ at, place, isNext }: { at: Place; place: CoursePlace; isNext: boolean }) {
  const [x, y] = at;
  const tint = place.number % TINTS;
  const look = LOOK[place.stars ?? 0] ?? LOOK[0];
  if (!place.lesson) return <circle class="to-come" cx={x} cy={y} r="3.2" />;
  return (
    <g class={`tint-${tint}`}>
      {look.core > 0 ? (
        <>
          <circle class="glare" fill={`url(#glare-${tint})`} cx={x} cy={y} r={look.glare} />
          <circle class="core" cx={x} cy={y} r={look.core} />
        </>
      ) : (
        <circle class="hollow" cx={x} cy={y} r={HOLLOW} />
      )}
      {isNext && <circle class="next-ring" cx={x} cy={y} r={RINGED} />}
    </g>
  );
}

/** A line that stops short of both stars; dotted where one of them is not earned yet. */
function Line({ from, to, earned }: { from: Place; to: Place; earned: boolean }) {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const share = SHORT / Math.max(1, Math.sqrt(dx * dx + dy * dy));
  if (share > 0.45) return null;
  const point = (t: number) => [from[0] + dx * t, from[1] + dy * t] as const;
  const [[x1, y1], [x2, y2]] = [point(share), point(1 - share)];
  return <path class={earned ? "joined earned" : "joined"} d={`M${x1} ${y1}L${x2} ${y2}`} />;
}

function Part({ part, radius, course }: { part: CoursePart; radius: number; course: Course }) {
  const figure = figureOf(part.part);
  const at = (i: number): Place => {
    const [x, y] = figure.places[i] ?? [0, 0];
    return [x * radius, y * radius];
  };
  const shown = part.places.slice(0, figure.places.length);
  const earned = (i: number) => (shown[i]?.stars ?? 0) > 0;
  return (
    <g>
      {linesOf(figure, shown.length).map(([from, to]) => (
        <Line key={`${from} ${to}`} from={at(from)} to={at(to)} earned={earned(from) && earned(to)} />
      ))}
      {shown.map((place, i) => (
        <Star key={i} at={at(i)} place={place} isNext={place.lesson !== null && place.lesson === course.next} />
      ))}
    </g>
  );
}

/** @param radius of the field, px */
export function CourseField({ course, radius }: { course: Course; radius: number }) {
  const grow = radius / 372;
  const own = 372;
  return (
    <svg
      class="course-field"
      viewBox={`${-own} ${-own} ${2 * own} ${2 * own}`}
      width={2 * radius}
      height={2 * radius}
      style={{ left: `${-radius}px`, top: `${-radius}px`, "--grow": Math.max(1, 0.8 / grow) }}
      role="img"
    >
      <title>{sayStart("field")}</title>
      <defs>
        <radialGradient id="course-sky">
          <stop class="sky-mid" offset="0" />
          <stop class="sky-out" offset=".82" />
          <stop class="sky-stop" offset="1" />
        </radialGradient>
        <radialGradient id="course-edge">
          <stop class="edge-clear" offset=".972" />
          <stop class="edge-dark" offset="1" />
        </radialGradient>
        {Array.from({ length: TINTS }, (_, tint) => (
          <radialGradient key={tint} id={`glare-${tint}`} class={`tint-${tint}`}>
            <stop class="glare-mid" offset="0" />
            <stop class="glare-half" offset=".25" />
            <stop class="glare-out" offset="1" />
          </radialGradient>
        ))}
      </defs>
      <circle r={own} fill="url(#course-sky)" />
      <Ground radius={own} />
      {course.parts.map((part) => (
        <Part key={part.part} part={part} radius={own} course={course} />
      ))}
      <circle r={own} fill="url(#course-edge)" />
    </svg>
  );
}
