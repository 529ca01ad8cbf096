/** Draws one sheet of fields: a row for each field, a column for each sky, what is noted of it beside. */
import { cross, DEG, dirFromMas, dirFromRadec, normalise } from "#core/celestial/vector.ts";
import { zenithConditions } from "#core/eye/conditions.ts";
import { nightUnder } from "#core/eye/nightSky.ts";
import { bodiesInView } from "#core/field/bodies.ts";
import { closeStars } from "#core/field/closeStars.ts";
import { fieldCone, seenField } from "#core/field/seenField.ts";
import { gearById } from "#core/optics/gear.ts";
import { viewFromIcrs } from "#core/optics/viewFrame.ts";
import type { Dir, Gear } from "#core/seams/index.ts";
import { withFiller } from "#core/sky/filler/withFiller.ts";
import { catalogueGlowBeyond } from "#core/sky/glow/catalogueGlow.ts";
import { glowCells } from "#core/sky/glow/glowCells.ts";
import { catalogueObjects } from "#core/sky/objects.ts";
import { solarSystemAt } from "#core/sky/solar/solarSystem.ts";
import { discsOf } from "../../../src/desk/play/bodies.ts";
import { createPicture, glowsOf, hasOpenSky, setGear, setSky } from "../../../src/desk/play/picture.ts";
import { createStage, type Lamp } from "../../../src/stage/index.ts";
import { squareReach } from "../../../src/stage/reach.ts";
import { pageSky } from "../stage/pageSky.ts";
import { BODY_SITE, type ContactBody, type ContactField } from "./fields.ts";

export interface SheetSpec {
  readonly gear: string;
  readonly fields: readonly (ContactField | ContactBody)[];
  readonly skies: Readonly<Record<string, number>>;
  readonly lamp: Lamp;
  readonly cellPx: number;
}

const NOTE_PX = 240;
const HEAD_PX = 30;
const GAP_PX = 8;
const LINE_PX = 19;
const BACK = "#0b0c0d";
const INK = { normal: "#b9bec4", red: "#aa3020", amber: "#aa5500" } as const;
const POLE: Dir = [0, 0, 1];
const never = new AbortController().signal;

let again = false;
const objects = catalogueObjects();
const source = withFiller(pageSky(), {
  isOn: () => true,
  again: () => {
    again = true;
  },
  objects,
});
const canvas = document.querySelector("canvas")!;
const stage = createStage(canvas, { onContextLost: () => undefined, onContextRestored: () => undefined });
let version = 0;

/** North, west and the zenith where the view is: as if it stood overhead, with the ground out of sight. */
function overhead(dir: Dir): number[] {
  const west = normalise(cross(dir, POLE));
  return [...cross(west, dir), ...west, ...dir];
}

/** Where a field lies, and the bodies in it. */
function placeOf(field: ContactField | ContactBody, gear: Gear) {
  if ("raDeg" in field) return { pointing: dirFromRadec(field.raDeg * DEG, field.decDeg * DEG), view: null };
  const system = solarSystemAt(BODY_SITE, field.utcMs);
  const body = system.bodies.find(({ name }) => name === field.body)!;
  return { pointing: dirFromMas(body), view: bodiesInView(system, gear) };
}

async function pictureOf(gear: Gear, field: ContactField | ContactBody, darknessMu: number, lamp: Lamp) {
  const { pointing, view } = placeOf(field, gear);
  const glow = catalogueGlowBeyond();
  const night = nightUnder({ ...zenithConditions(darknessMu), glowMuAt: glow }, 0, objects);
  const input = { pointing, gear, source, seeing: night.seeing, objects };
  await source.want(seenField(input).missing, 0, never);
  do {
    again = false;
    seenField(input);
  } while (again);
  const seen = seenField(input);
  if (seen.missing.length > 0) throw new Error(`the sky of ${fieldCone(pointing, gear).radiusRad} is not here`);
  const picture = createPicture();
  const limitMag = seen.limitMilliMag / 1000;
  setGear(picture, gear, limitMag);
  setSky(picture, gear, pointing, night);
  viewFromIcrs(pointing, POLE, { parity: 1, rotationRad: 0 }, picture.viewFromIcrs);
  version += 1;
  const isOpen = hasOpenSky(gear);
  return Object.assign(picture, {
    blocks: view ? [...seen.blocks, view.points] : seen.blocks,
    bodies: view ? discsOf(view) : [],
    close: closeStars(seen.objects, view, gear, (picture.starWidthRad / DEG) * 3600),
    objects: glowsOf(seen.objects, limitMag),
    objectsVersion: version,
    lamp,
    horizon: isOpen ? { horizonFromIcrs: overhead(pointing), sunAltitudeRad: -40 * DEG, sunAzimuthRad: 0 } : null,
    glow: isOpen ? glowCells(glow, darknessMu) : null,
  });
}

function write(pen: CanvasRenderingContext2D, text: string, x: number, y: number) {
  let line = "";
  let at = y;
  for (const word of text.split(" ")) {
    const longer = line ? `${line} ${word}` : word;
    if (pen.measureText(longer).width <= NOTE_PX - 2 * GAP_PX) line = longer;
    else {
      pen.fillText(line, x, at);
      at += LINE_PX;
      line = word;
    }
  }
  pen.fillText(line, x, at);
}

/** The sheet as a JPEG, base64. */
async function sheetOf({ gear: id, fields, skies, lamp, cellPx }: SheetSpec): Promise<string> {
  const gear = gearById(id);
  const sheet = document.createElement("canvas");
  const columns = Object.entries(skies);
  sheet.width = NOTE_PX + columns.length * (cellPx + GAP_PX);
  sheet.height = HEAD_PX + fields.length * (cellPx + GAP_PX);
  const pen = sheet.getContext("2d")!;
  pen.fillStyle = BACK;
  pen.fillRect(0, 0, sheet.width, sheet.height);
  pen.fillStyle = INK[lamp];
  pen.font = "15px sans-serif";
  const drawn = await stage;
  drawn.resize({
    reachCssPx: squareReach(cellPx / 2),
    devicePixelRatio: 1,
    fieldRadiusCssPx: cellPx / 2 - 3,
    rimCssPx: 0,
    starScale: 0.86,
  });
  pen.fillText(id, GAP_PX, 20);
  for (const [row, field] of fields.entries()) {
    const top = HEAD_PX + row * (cellPx + GAP_PX);
    write(pen, field.name, GAP_PX, top + LINE_PX);
    write(pen, field.note, GAP_PX, top + 2.5 * LINE_PX);
    for (const [column, [sky, darknessMu]] of columns.entries()) {
      const left = NOTE_PX + column * (cellPx + GAP_PX);
      if (row === 0) pen.fillText(`${sky}, ${darknessMu}`, left, 20);
      const picture = await pictureOf(gear, field, darknessMu, lamp);
      drawn.draw(picture);
      // The code of bodies comes when first there is one, and the stage then draws again.
      if (picture.bodies.length > 0) await new Promise((done) => setTimeout(done, 250));
      drawn.draw(picture);
      pen.drawImage(canvas, left, top);
    }
  }
  return sheet.toDataURL("image/jpeg", 0.88).split(",")[1]!;
}

declare global {
  interface Window {
    contactSheet: typeof sheetOf;
  }
}
Object.assign(window, { contactSheet: sheetOf });
