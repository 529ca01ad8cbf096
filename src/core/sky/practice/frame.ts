/** What a seed's whole sky hangs on. */
import { exactCos, exactSin } from "#core/celestial/exactMath.ts";
import { cross, offsetDir, TWO_PI } from "#core/celestial/vector.ts";
import type { Dir } from "#core/seams/index.ts";
import { type Chance, createChance } from "./chance.ts";
import { PURPOSE, type Seed } from "./seed.ts";

export type SkyStar = { readonly dir: Dir; readonly milliMag: number; readonly colourBV: number };

/** A galaxy of the seed's own, lying anyhow in the sky: its pole, longitude 0 and longitude 90 degrees. */
export type SkyFrame = {
  readonly hash: number;
  readonly galacticPole: Dir;
  readonly galacticCentre: Dir;
  readonly galacticQuarter: Dir;
};

/** A direction anywhere, each as likely as any other. */
export function drawDir(chance: Chance): Dir {
  const z = 2 * chance() - 1;
  const angle = TWO_PI * chance();
  const radius = Math.sqrt(1 - z * z);
  return [radius * exactCos(angle), radius * exactSin(angle), z];
}

/** The frame of a seed: each the same object for the same seed. */
export function frameOf({ hash }: Seed): SkyFrame {
  const known = frames.get(hash);
  if (known) return known;
  const chance = createChance(hash, PURPOSE.frame);
  const galacticPole = drawDir(chance);
  const galacticCentre = offsetDir(galacticPole, TWO_PI * chance(), TWO_PI / 4);
  const made = { hash, galacticPole, galacticCentre, galacticQuarter: cross(galacticPole, galacticCentre) };
  frames.set(hash, made);
  if (frames.size > KEPT) frames.delete(frames.keys().next().value!);
  return made;
}

const KEPT = 16;
const frames = new Map<number, SkyFrame>();
