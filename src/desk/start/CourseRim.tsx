/** The rim: the part in hand, each lesson that is here a button, those to come small and silent. */

import { fittedSizePx, onCircle } from "../play/arcs.ts";
import type { Barrel } from "../play/geometry.ts";
import { ArcPiece } from "../play/Piece.tsx";
import { RimGround } from "../play/Rim.tsx";
import { type Course, type CoursePlace, rimAngle } from "./course.ts";
import { sayStart } from "./words.ts";

/** Half of the next lesson's mark, and air beside it. */
const MARK_PX = 20;

/** Places of one to three dots within a ring. */
const DOTS: readonly (readonly (readonly [x: number, y: number])[])[] = [
  [],
  [[0, 0]],
  [
    [-0.5, -3.5],
    [0.5, 3.5],
  ],
  [
    [-4, 2],
    [0, -3.6],
    [4.2, 1.6],
  ],
];

function wordsOf({ lesson, stars, number }: CoursePlace, isNext: boolean): string {
  const title = lesson?.title ?? "";
  if (stars) return sayStart("lessonDone", { number, title, dots: stars });
  return sayStart(isNext ? "lessonNext" : "lessonOpen", { number, title });
}

function PlaceMark({ place, isNext }: { place: CoursePlace; isNext: boolean }) {
  const { stars, number } = place;
  if (isNext)
    return (
      <>
        <circle class="next-place" r="17" />
        <text class="next-number" y="6.2">
          {number}
        </text>
      </>
    );
  return (
    <>
      <circle class="place" r="11" />
      {stars ? (
        DOTS[stars]?.map(([cx, cy]) => <circle key={`${cx} ${cy}`} class="place-dot" cx={cx} cy={cy} r="2.3" />)
      ) : (
        <text class="place-number" y="4.6">
          {number}
        </text>
      )}
    </>
  );
}

/** Room for lettering between the last place and the first, beside the largest mark that a place has, px. */
const roomBelowPx = (radius: number, size: number, count: number): number =>
  2 * (((180 - Math.abs(rimAngle(0, count))) * Math.PI * radius) / 180 - MARK_PX * size);

interface Props {
  readonly course: Course;
  readonly barrel: Barrel;
  readonly onOpen: (lessonId: string) => void;
}

export function CourseRim({ course, barrel, onOpen }: Props) {
  const { fieldPx, rimPx } = barrel;
  const { done, of } = course;
  const { places, part } = course.inHand;
  const radius = fieldPx + rimPx / 2;
  const size = Math.max(0.72, Math.min(1.2, rimPx / 52));
  const type = Math.max(0.85, Math.min(1.2, rimPx / 52));
  const hit = Math.max(44, 40 * size);
  const below = sayStart(fieldPx < 210 ? "doneShort" : "done", { done, of }).toUpperCase();
  return (
    <>
      <RimGround barrel={barrel} />
      <nav aria-label={sayStart("part", { part })}>
        {places.map((place, i) => {
          const { x, y } = onCircle(radius, rimAngle(i, places.length));
          const { lesson } = place;
          const at = { transform: `translate(${x.toFixed(1)}px, ${y.toFixed(1)}px)` };
          if (!lesson)
            return (
              <svg key={i} class="rim-place" viewBox="-22 -22 44 44" style={at} aria-hidden="true">
                <circle class="place-to-come" r={3 * size} />
              </svg>
            );
          const isNext = lesson === course.next;
          const words = wordsOf(place, isNext);
          return (
            <button
              key={lesson.id}
              type="button"
              class="rim-place"
              style={{ ...at, width: `${hit}px`, height: `${hit}px`, margin: `${-hit / 2}px` }}
              aria-label={words}
              title={words}
              onClick={() => onOpen(lesson.id)}
            >
              <svg viewBox={`${-hit / 2} ${-hit / 2} ${hit} ${hit}`} aria-hidden="true">
                <g transform={`scale(${size})`}>
                  <PlaceMark place={place} isNext={isNext} />
                </g>
              </svg>
            </button>
          );
        })}
      </nav>
      <p class="hidden-words">{sayStart("done", { done, of })}</p>
      <ArcPiece
        text={below}
        baselinePx={fieldPx + rimPx * 0.36}
        atDeg={180}
        sizePx={fittedSizePx(below, roomBelowPx(radius, size, places.length), 14 * type)}
        class="aside-words"
      />
    </>
  );
}
