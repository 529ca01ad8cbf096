/** Finds the anchor: the eye looks round, the sight is pushed after it, by the field's words; near the middle by the picture. */
import { type Blob, findStars } from "./blobs.ts";
import { waitInPage } from "./hands.ts";
import { anchorTold, inUse, type Player, picture, type Told } from "./looks.ts";

/** Time for a tube that was let go to come to a stand. */
const STAND_MS = 400;
const MOST_PUSHES = 30;
/** Within so long the page takes it, or says that the star is not in the middle yet. */
const TAKEN_MS = 1500;
/** Near enough, radii: within the sight's inner ring; in a glass that is not so wide about the middle will do. */
const NEAR = { sight: 0.016, glass: 0.1 } as const;

/** A way in the field, radii. */
interface Way {
  readonly x: number;
  readonly y: number;
}
/** Where the anchor stands: by the picture, or by words, which are coarse. */
interface Seen extends Way {
  readonly byPicture: boolean;
}
const wayOf = ({ out, clock }: Told): Way => ({
  x: out * Math.sin((clock * Math.PI) / 6),
  y: out * Math.cos((clock * Math.PI) / 6),
});

/** Ends where the page has taken it that the anchor stands in the middle. @throws Error where it does not come to that */
export async function seekAnchor(player: Player): Promise<void> {
  const { page, hand } = player;
  const hasEye = /^Naked eye/.test(await inUse(page));
  if (hasEye) await lookRound(player);
  /** What was pushed since the anchor was in view. */
  let gone: Way = { x: 0, y: 0 };
  let gain: Way = { x: 1, y: 1 };
  let before: Seen | null = null;
  const ways: string[] = [];
  for (let i = 0; i < MOST_PUSHES; i++) {
    const seen = await towardsAnchor(player, hasEye);
    // Out of view without an eye to see where it went: the last push went too far.
    const way = seen ?? { x: -gone.x / 2, y: -gone.y / 2 };
    if (seen && Math.hypot(way.x, way.y) < (hasEye ? NEAR.sight : NEAR.glass)) {
      await hand.press("confirm");
      if (await isTaken(player)) return;
    }
    ways.push(`${seen ? "" : "lost "}${way.x.toFixed(3)} ${way.y.toFixed(3)}`);
    gain = learnt(gain, before, seen);
    before = seen;
    await hand.push((gain.x * way.x) / 2, (gain.y * way.y) / 2);
    gone = seen ? way : { x: gone.x + way.x, y: gone.y + way.y };
    await waitInPage(page, STAND_MS);
  }
  throw new Error(`the anchor was not found; it stood at ${ways.join(", ")} radii from the middle`);
}

/** Whether the page has taken it that the anchor stands in the middle: what asks for it goes. */
const isTaken = ({ page }: Player): Promise<boolean> =>
  page
    .getByRole("button", { name: "The star is in the middle" })
    .waitFor({ state: "detached", timeout: TAKEN_MS })
    .then(
      () => true,
      () => false,
    );

/** A way shorter than this, radii, does not tell how far a push goes. */
const TELLING = 0.05;
const MOST_GAIN = 4;

/** How much further a push has to go than it looks, along each axis: high up, a tube swung round hardly moves the view. */
function learnt(gain: Way, before: Seen | null, now: Seen | null): Way {
  if (!before?.byPicture || !now?.byPicture) return gain;
  const along = (asked: number, left: number, gainBefore: number) =>
    Math.abs(asked) < TELLING ? gainBefore : Math.min(MOST_GAIN, (gainBefore * asked) / (asked - left));
  return { x: along(before.x, now.x, gain.x), y: along(before.y, now.y, gain.y) };
}

/** With the naked eye, until the anchor stands near the middle; then the sight is taken. */
async function lookRound({ page, hand }: Player): Promise<void> {
  for (let i = 0; i < 3; i++) {
    const told = await anchorTold(page);
    if (!told || told.out < 0.2) break;
    const { x, y } = wayOf(told);
    await hand.lookRound(x / 2, y / 2);
    await waitInPage(page, STAND_MS);
  }
  await hand.take(/Reflex sight/);
}

/** How far the anchor stands from the middle: by words as long as it is far, by the picture near it; null out of view. */
async function towardsAnchor(player: Player, hasEye: boolean): Promise<Seen | null> {
  const { page, starPx } = player;
  const told = await anchorTold(page);
  const byWords = told ?? (hasEye ? await byEye(player) : null);
  if (!byWords) return null;
  const star = told && told.out <= 0.4 ? starAt(findStars(await picture(page), starPx), told) : null;
  return star ? { x: star.x, y: star.y, byPicture: true } : { ...wayOf(byWords), byPicture: false };
}

/** A picture is so sharp, radii; and the clock's hours are half of this wide to either side, with a little over. */
const SHARP = 0.012;
const HOUR_COS = Math.cos((27 * Math.PI) / 180);

/** The brightest star that stands where the words tell: a neighbour as bright as the anchor stands elsewhere. */
function starAt(stars: readonly Blob[], told: Told): Blob | null {
  const clock = wayOf({ ...told, out: 1 });
  const fits = ({ x, y }: Blob) => {
    const out = Math.hypot(x, y);
    if (out < told.least - SHARP || out > told.most + SHARP) return false;
    return told.out === 0 || out < 2 * SHARP || x * clock.x + y * clock.y > HOUR_COS * out;
  };
  return stars.find(fits) ?? null;
}

/** The eye sees more than the sight shows: it tells which way the anchor is. */
async function byEye({ page, hand }: Player): Promise<Told> {
  await hand.take(/Naked eye/);
  await waitInPage(page, STAND_MS);
  const told = await anchorTold(page);
  await hand.take(/Reflex sight/);
  if (!told) throw new Error("the eye does not see the anchor");
  return { ...told, out: 1 };
}
