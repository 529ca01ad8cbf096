/** The play screen's signals in their first state. The controller writes them; panels see them read-only, as the model has them. */
import { signal } from "@preact/signals";
import type { ChartPage } from "#core/chart/page.ts";
import { PLAIN_VIEW } from "#core/chart/sheetView.ts";
import type { ChartMark } from "#core/chart/types.ts";
import type { Lesson } from "#core/lesson/types.ts";
import { GEAR, gearById } from "#core/optics/gear.ts";
import type { Dir } from "#core/seams/index.ts";
import type { SheetMode, SheetView } from "../sheet/types.ts";
import type { StarePlace } from "./gaze.ts";
import type { LimitShare } from "./limits.ts";
import type {
  AidOffer,
  Compass,
  HandMark,
  HintRow,
  HourTold,
  LadderRing,
  LadderStar,
  NightClock,
  Now,
  Phase,
  Proof,
  SheetPin,
  WayList,
} from "./model.ts";

const NO_AID: AidOffer = { offered: false, on: false, cost: 0 };

export function createSignals(lesson: Lesson) {
  const first = lesson.gear.use[0];
  return {
    phase: signal<Phase>("loading"),
    trouble: signal<string | null>(null),
    gear: signal(first && GEAR.has(first) ? gearById(first) : gearById("eye")),
    limitMag: signal(6),
    lackMag: signal(0),
    limitRange: signal<{ least: number; most: number } | null>(null),
    compass: signal<Compass | null>(null),
    handMark: signal<HandMark | null>(null),
    claim: signal<{ can: boolean; why: string | null; wrongCost: number; wrongClaims: number }>({
      can: false,
      why: null,
      wrongCost: 0,
      wrongClaims: 0,
    }),
    seeking: signal(true),
    fieldWords: signal(""),
    ladder: signal<readonly LadderRing[]>([]),
    ladderStars: signal<readonly LadderStar[]>([]),
    altitudeDeg: signal(45),
    now: signal<Now>({ headline: lesson.title, text: "" }),
    notice: signal<string | null>(null),
    hints: signal<readonly HintRow[]>([]),
    home: signal({ can: false, cost: 0 }),
    limits: signal<readonly LimitShare[]>([]),
    conditions: signal<readonly [string, string, string]>(["", "", ""]),
    lengths: signal<{ trailDeg: number; wayDeg: number } | null>(null),
    way: signal<WayList | null>(null),
    carry: signal(NO_AID),
    asInInstrument: signal(NO_AID),
    night: signal<NightClock | null>(null),
    hour: signal<HourTold | null>(null),
    grain: signal(false),
    skyTurns: signal<boolean | null>(null),
    screws: signal<boolean | null>(null),
    page: signal<ChartPage | null>(null),
    marks: signal<readonly ChartMark[]>([]),
    sheetView: signal<SheetView>(PLAIN_VIEW),
    sheetMode: signal<SheetMode>("turn"),
    ring: signal<{ dir: Dir; fieldDeg: number } | null>(null),
    pointing: signal<Dir | null>(null),
    trail: signal<readonly Dir[]>([]),
    pins: signal<readonly SheetPin[]>([]),
    pencil: signal<readonly (readonly Dir[])[]>([]),
    asksPin: signal(false),
    agrees: signal<boolean | null>(null),
    proof: signal<Proof | null>(null),
    handOnField: signal(false),
    stare: signal<StarePlace | null>(null),
    beside: signal(false),
    torch: signal(false),
  };
}
export type PlaySignals = ReturnType<typeof createSignals>;
