/** The claim: a piece of the rim that is a button, and a smaller one for "right place, nothing seen". */

import { say } from "../words/say.ts";
import { bandBox, bandPath, fittedSizePx } from "./arcs.ts";
import { CLAIM, type PlayLayout, SHORT_UNDER_PX } from "./geometry.ts";
import type { PlayModel } from "./model.ts";
import { ArcWords, Piece } from "./Piece.tsx";

const SIZE = { claim: 17, small: 12.5 } as const;
const NOT_SEEN = { atDeg: 213.5, halfDeg: 11 } as const;
/** Where a finger may press, beyond what is drawn: into the field by so much. */
const TOUCH_PX = 4;

interface ArcButtonProps {
  readonly layout: PlayLayout;
  readonly text: string;
  readonly said: string;
  readonly atDeg: number;
  readonly halfDeg: number;
  readonly sizePx: number;
  readonly class: string;
  readonly can: boolean;
  readonly onPress: () => void;
}

/** A real button over its arc: only the arc itself takes the pointer. */
function ArcButton({ layout, text, said, atDeg, halfDeg, sizePx, class: name, can, onPress }: ArcButtonProps) {
  const { fieldPx, rimPx } = layout.barrel;
  const [inner, outer] = [fieldPx + rimPx * 0.13, fieldPx + rimPx * 0.885];
  const band = (by: number) => bandPath(inner - by, outer + by, atDeg - halfDeg - by / 7, atDeg + halfDeg + by / 7);
  const size = fittedSizePx(text, ((2 * halfDeg * Math.PI) / 180) * (fieldPx + rimPx * 0.5) - 22, sizePx);
  return (
    <button type="button" class={`arc-button ${name}`} aria-label={said} aria-disabled={!can} onClick={onPress}>
      <Piece box={bandBox(inner - 8, outer + 8, atDeg - halfDeg - 1.4, atDeg + halfDeg + 1.4, 3)}>
        <path class="arc-focus" d={band(5)} />
        <path class="arc-hit" d={bandPath(fieldPx - TOUCH_PX, fieldPx + rimPx, atDeg - halfDeg, atDeg + halfDeg)} />
        <path class="arc-face" d={band(0)} />
        <ArcWords text={text} baselinePx={fieldPx + rimPx * 0.5 - size * 0.36} atDeg={atDeg} sizePx={size} />
      </Piece>
    </button>
  );
}

/** A wrong claim dims the piece for a moment: each one by another name, so that the next dims it again. */
const afterWrong = (wrongClaims: number) =>
  wrongClaims === 0 ? "" : wrongClaims % 2 === 1 ? "wrong-odd" : "wrong-even";

/** Claims or, while the anchor is sought, says that it stands in the middle. Where neither can be, a press tells why. */
export function Claim({
  model,
  layout,
  onWhy,
}: {
  model: PlayModel;
  layout: PlayLayout;
  onWhy: (why: string) => void;
}) {
  const { can, why, wrongCost, wrongClaims } = model.claim.value;
  const seeking = model.seeking.value;
  const small = layout.barrel.fieldPx < SHORT_UNDER_PX;
  const said = wrongCost > 0 ? say("play.claimSaid", { points: wrongCost }) : say("play.claimFree");
  const press = () => {
    if (seeking) model.confirm();
    else if (can) model.claimHere();
    else if (why) onWhy(why);
  };
  return (
    <>
      <ArcButton
        layout={layout}
        class={`claim ${afterWrong(wrongClaims)}`}
        text={say(seeking ? (small ? "play.seekShort" : "play.seek") : "play.claim").toUpperCase()}
        said={seeking ? say("play.seek") : can || !why ? said : `${said} ${why}`}
        atDeg={CLAIM.atDeg}
        halfDeg={small ? CLAIM.phoneHalfDeg : CLAIM.halfDeg}
        sizePx={SIZE.claim * layout.type}
        can={seeking || can}
        onPress={press}
      />
      {can && !seeking && !small && (
        <ArcButton
          layout={layout}
          class="not-seen"
          text={say("play.notSeen").toUpperCase()}
          said={say("play.notSeenSaid")}
          atDeg={NOT_SEEN.atDeg}
          halfDeg={NOT_SEEN.halfDeg}
          sizePx={SIZE.small * layout.type}
          can
          onPress={() => model.claimNotSeen()}
        />
      )}
    </>
  );
}
