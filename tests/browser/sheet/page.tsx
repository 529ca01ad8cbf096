/** The sheet alone on a page, with handles for the specs. */
import { batch, signal } from "@preact/signals";
import { render } from "preact";
import { DEG, dirFromRadec, radecFromDir } from "#core/celestial/vector.ts";
import { chartMarks } from "#core/chart/marks.ts";
import { type ChartPage, reachRad } from "#core/chart/page.ts";
import { PLAIN_VIEW } from "#core/chart/sheetView.ts";
import type { Dir } from "#core/seams/index.ts";
import { createCatalogueSource } from "#core/sky/catalogue/catalogueSource.ts";
import { tilesOfCone } from "#core/sky/catalogue/tilesOfCone.ts";
import { catalogueNames } from "#core/sky/names/catalogueNames.ts";
import { Sheet } from "../../../src/desk/sheet/Sheet.tsx";
import { type SheetTool, SheetTools } from "../../../src/desk/sheet/SheetTools.tsx";
import type { SheetMode, SheetProps, SheetView } from "../../../src/desk/sheet/types.ts";
import "../../../src/desk/styles/fonts.css";
import "../../../src/desk/styles/tokens.css";
import "../../../src/desk/styles/base.css";
import "../../../src/desk/styles/sheet.css";
import "./page.css";

type Radec = readonly [raDeg: number, decDeg: number];
export interface SheetScene {
  readonly centre: Radec;
  readonly pxPerDeg: number;
  readonly limitMag: number;
  /** Size of the page, and how many px of the screen a px of it has. */
  readonly widthPx: number;
  readonly heightPx: number;
  readonly zoom?: number;
  /** Middle of the sheet on the screen. */
  readonly at: readonly [x: number, y: number];
  readonly anchor?: Radec;
  readonly target?: Radec;
  readonly asterisms?: readonly (readonly Radec[])[];
  readonly view?: Partial<SheetView>;
  readonly mode?: SheetMode;
  readonly lamp?: "low" | "full";
  readonly lettering?: "level" | "withPaper";
  readonly ring?: { readonly at: Radec; readonly fieldDeg: number };
  readonly pointing?: Radec;
  readonly trail?: readonly Radec[];
  readonly ways?: readonly (readonly Radec[])[];
  readonly rings?: readonly { readonly at: Radec; readonly fieldDeg: number; readonly style: "fieldRing" | "eyepieceRing" }[];
  readonly notes?: readonly { readonly at: Radec; readonly text: string; readonly kind: "stop" | "leg" | "trail" }[];
  readonly proof?: readonly Radec[];
  readonly legend?: boolean;
  readonly asks?: string;
  readonly reducedMotion?: boolean;
}
const TOOLS: readonly SheetTool[] = ["flip", "turn", "closer", "pin", "pencil", "ruler", "legend"];
const dirOf = ([raDeg, decDeg]: Radec): Dir => dirFromRadec(raDeg * DEG, decDeg * DEG);
const radecOf = (dir: Dir): Radec => {
  const { raRad, decRad } = radecFromDir(dir);
  return [raRad / DEG, decRad / DEG];
};

const source = createCatalogueSource({
  fetchFile: async (name) => (await fetch(`./sky/${name}`)).arrayBuffer(),
});
const here = document.querySelector("#here")!;
const view = signal<SheetView>(PLAIN_VIEW);
const mode = signal<SheetMode>("turn");
const legend = signal(false);
const live = signal<Pick<SheetProps, "hand"> | null>(null);
const told: { what: string; value: unknown }[] = [];
const violations: string[] = [];
document.addEventListener("securitypolicyviolation", (event) => violations.push(event.violatedDirective));

async function propsOf(scene: SheetScene): Promise<SheetProps> {
  const { widthPx, heightPx, pxPerDeg, limitMag, zoom = 1 } = scene;
  const page: ChartPage = { centre: dirOf(scene.centre), widthPx, heightPx, marginPx: 18, pxPerDeg, limitMag };
  const cone = { centre: page.centre, radiusRad: reachRad(page) };
  await source.want(tilesOfCone(cone, limitMag), 0, new AbortController().signal);
  const names = catalogueNames();
  const marks = chartMarks(page, {
    blocks: source.resident(cone, limitMag).blocks,
    names: names.stars,
    segments: names.segments,
    figures: names.figures,
    objects: [],
    anchor: scene.anchor ? dirOf(scene.anchor) : null,
    target: scene.target
      ? {
          dir: dirOf(scene.target),
          object: {
            id: "target",
            names: [],
            kind: "planetaryNebula",
            dir: dirOf(scene.target),
            magV: 7.4,
            majorArcmin: 8,
            minorArcmin: 6,
            axisDeg: 0,
            profile: "ring",
            constellation: "",
            looks: "",
          },
        }
      : null,
    asterisms: (scene.asterisms ?? []).map((stars) => stars.map(dirOf)),
    ways: [],
    words: { anchor: "anchor", target: "target" },
  });
  return {
    page,
    marks,
    view,
    mode,
    legend,
    hand: {
      ring: scene.ring ? { dir: dirOf(scene.ring.at), fieldDeg: scene.ring.fieldDeg } : null,
      pointing: scene.pointing ? dirOf(scene.pointing) : null,
      trail: (scene.trail ?? []).map(dirOf),
      pins: [],
      pencil: [],
    },
    ways: (scene.ways ?? []).map((way) => way.map(dirOf)),
    rings: (scene.rings ?? []).map((ring) => ({ ...ring, at: dirOf(ring.at) })),
    notes: (scene.notes ?? []).map((note) => ({ ...note, at: dirOf(note.at) })),
    lamp: scene.lamp ?? "full",
    lettering: scene.lettering ?? "level",
    sizePx: { width: widthPx * zoom, height: heightPx * zoom },
    fieldDeg: 5.3,
    title: "North of the Arrow",
    instruments: [
      { name: "Finder", fieldDeg: 5.3 },
      { name: "Eyepiece", fieldDeg: 1.1 },
    ],
    proof: scene.proof ? scene.proof.map(dirOf) : null,
    reducedMotion: scene.reducedMotion ?? false,
    onView: (value, done) => done && told.push({ what: "view", value }),
    onPin: (dir) => {
      told.push({ what: "pin", value: radecOf(dir) });
      const hand = live.value!.hand;
      live.value = { hand: { ...hand, pins: [...hand.pins, { at: dir }] } };
    },
    onPencil: (dirs) => {
      told.push({ what: "pencil", value: dirs.map(radecOf) });
      const hand = live.value!.hand;
      live.value = { hand: { ...hand, pencil: [...hand.pencil, dirs] } };
    },
    onRubOut: () => {
      told.push({ what: "rubOut", value: null });
      const hand = live.value!.hand;
      live.value = { hand: { ...hand, pencil: hand.pencil.slice(0, -1) } };
    },
  };
}

const handles = {
  told,
  violations,
  view: () => view.value,
  setLamp: (lamp: "normal" | "red" | "amber") => {
    document.documentElement.dataset.lamp = lamp;
  },
  setView: (part: Partial<SheetView>) => {
    view.value = { ...view.value, ...part };
  },
  async show(scene: SheetScene) {
    const props = await propsOf(scene);
    batch(() => {
      view.value = { ...PLAIN_VIEW, ...scene.view };
      mode.value = scene.mode ?? "turn";
      legend.value = scene.legend ?? false;
      live.value = { hand: props.hand };
    });
    const [x, y] = scene.at;
    const { width, height } = props.sizePx;
    const Page = () => (
      <>
        <div class="placed" style={{ left: `${x - width / 2}px`, top: `${y - height / 2}px` }}>
          <Sheet {...props} hand={live.value!.hand} />
        </div>
        <div class="placed" style={{ left: "40px", top: "640px", width: "620px" }}>
          <SheetTools
            view={view}
            mode={mode}
            legend={legend}
            tools={TOOLS}
            asks={scene.asks}
            pencilLines={live.value!.hand.pencil.length}
            onView={props.onView!}
            onRubOut={props.onRubOut!}
          />
        </div>
      </>
    );
    render(null, here);
    render(<Page />, here);
  },
  /** Turns the sheet by a view a frame; gives the intervals between frames, ms. */
  async turnFrames(count: number, stepRad: number): Promise<number[]> {
    const frame = () => new Promise<number>((resolve) => requestAnimationFrame(resolve));
    const times: number[] = [];
    let last = await frame();
    for (let i = 0; i < count; i++) {
      view.value = { ...view.value, turnRad: view.value.turnRad + stepRad };
      const now = await frame();
      times.push(now - last);
      last = now;
    }
    return times;
  },
};
export type SheetPage = typeof handles;
Object.assign(window, { sheetPage: handles });
