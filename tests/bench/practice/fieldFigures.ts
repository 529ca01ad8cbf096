/** What a finder field looks like, in numbers: what a practised eye might tell a grown sky by. */
import { DEG, positionAngleRad, separationRad } from "#core/celestial/vector.ts";
import type { Dir } from "#core/seams/index.ts";
import type { FoundStar } from "#core/sky/catalogue/starsWithin.ts";

const PAIR_DEG = 0.1;
const CLOSE_DEG = 0.02;

const mean = (list: readonly number[]): number => (list.length ? list.reduce((sum, x) => sum + x, 0) / list.length : 0);
const share = (list: readonly number[], holds: (x: number) => boolean): number =>
  list.filter(holds).length / Math.max(1, list.length);
const quantile = (list: readonly number[], at: number): number =>
  [...list].sort((a, b) => a - b)[Math.floor(at * list.length)] ?? 0;
const spread = (list: readonly number[]): number => Math.sqrt(mean(list.map((x) => (x - mean(list)) ** 2)));

/**
 * At least twenty figures of a field's stars: counts, their slope, neighbours, the brightest pairs, lopsidedness, colours.
 * @param stars brightest first, none nearer than 15" to a brighter one
 */
export function fieldFigures(stars: readonly FoundStar[], middle: Dir, radiusDeg: number): number[] {
  const mags = stars.map(({ milliMag }) => milliMag / 1000);
  const colours = stars.map(({ colourBV }) => colourBV);
  const apart = (a: FoundStar, b: FoundStar) => separationRad(a.dir, b.dir) / DEG;
  const nearest = stars.map((star) => Math.min(9, ...stars.filter((o) => o !== star).map((o) => apart(star, o))));
  const even = 0.5 / Math.sqrt(Math.max(1, stars.length) / (Math.PI * radiusDeg ** 2));
  const inner = share(
    stars.map((star) => separationRad(star.dir, middle) / DEG),
    (x) => x < radiusDeg / Math.SQRT2,
  );
  const eighths = Array.from(
    { length: 8 },
    (_, i) => stars.filter(({ dir }) => Math.floor(positionAngleRad(middle, dir) / (Math.PI / 4)) === i).length,
  );
  const [a, b, c] = stars;
  const count = (toMag: number) => mags.filter((mag) => mag <= toMag).length;
  return [
    Math.log(1 + count(6.5)),
    Math.log(1 + count(7.5)),
    Math.log(1 + count(8)),
    Math.log(1 + count(8.5)),
    Math.log(1 + count(9)),
    Math.log(1 + count(9.5)),
    mean(nearest) / even,
    spread(nearest) / even,
    quantile(nearest, 0.1) / even,
    quantile(nearest, 0.9) / even,
    share(nearest, (x) => x < PAIR_DEG),
    share(nearest, (x) => x < CLOSE_DEG),
    a && b ? apart(a, b) / radiusDeg : 1,
    a && c ? apart(a, c) / radiusDeg : 1,
    a && b ? b.milliMag / 1000 - a.milliMag / 1000 : 3,
    mags[0] ?? 9.5,
    mags[4] ?? 9.5,
    inner,
    spread(eighths) / Math.sqrt(Math.max(1, mean(eighths))),
    Math.max(...eighths) / Math.max(1, mean(eighths)),
    mean(colours),
    spread(colours),
    quantile(colours, 0.1),
    quantile(colours, 0.5),
    quantile(colours, 0.9),
    share(colours, (x) => x > 0.75 && x < 0.95),
    share(colours, (x) => x > 1.5),
  ];
}
