import { describe, expect, it } from "vitest";
import { DEG, dirFromRadec, dot } from "#core/celestial/vector.ts";
import { catalogueGlowBeyond } from "#core/sky/glow/catalogueGlow.ts";
import { glowCells } from "#core/sky/glow/glowCells.ts";
import { GLOW_FLOATS } from "#core/sky/glow/glowFormat.ts";
import { GALACTIC_POLE } from "#core/sky/glow/glowMap.ts";

const corner = (corners: Float32Array, i: number) => {
  const [x, y, z, , , , dex] = corners.slice(i * GLOW_FLOATS, (i + 1) * GLOW_FLOATS);
  return { dir: [x!, y!, z!] as const, dex: dex! };
};
const near = (cells: ReturnType<typeof glowCells>, raDeg: number, decDeg: number) => {
  const to = dirFromRadec(raDeg * DEG, decDeg * DEG);
  let best = { dex: 0, cos: -1 };
  for (let i = 0; i < cells.count; i++) {
    const { dir, dex } = corner(cells.corners, i);
    const cos = dot(dir, to);
    if (cos > best.cos) best = { dex, cos };
  }
  return best.cos > Math.cos(4 * DEG) ? best.dex : 0;
};

describe("the Milky Way of the picture", () => {
  const dark = glowCells(catalogueGlowBeyond(), 21.8);

  it("is a band: nothing at the galactic poles, brighter in Sagittarius than in Taurus", () => {
    for (let i = 0; i < dark.count; i++) {
      const { dir, dex } = corner(dark.corners, i);
      if (Math.abs(dot(dir, GALACTIC_POLE)) > Math.sin(70 * DEG)) expect(dex).toBeLessThan(0.06);
    }
    // The cloud at 18h -28 deg, Cygnus at 20h +36 deg, and the anticentre at 5h45m +28 deg (handbooks, from memory).
    expect(near(dark, 270, -28)).toBeGreaterThan(1.3 * near(dark, 86, 28));
    expect(near(dark, 300, 36)).toBeGreaterThan(near(dark, 86, 28));
    expect(near(dark, 86, 28)).toBeGreaterThan(0.05);
  });

  it("drowns in the light of a city", () => {
    const city = glowCells(catalogueGlowBeyond(), 18);
    expect(near(city, 270, -28)).toBeLessThan(0.15 * near(dark, 270, -28));
    expect(city.count).toBeLessThan(dark.count);
  });
});
