/** The sky that free practice takes place under: from the city's to the mountain's, and what the eye has of it. */
import { useId } from "preact/hooks";
import { AVERAGE_BV } from "#core/celestial/magnitude.ts";
import { zenithConditions } from "#core/eye/conditions.ts";
import { eyeSeeing } from "#core/eye/eyeSeeing.ts";
import { SITE_SKIES, SITE_SKY_MU, type SiteSky } from "#core/lesson/siteSkies.ts";
import type { Dir } from "#core/seams/index.ts";
import { saySeed, siteWords } from "../seed/seedIds.ts";
import { fixed } from "../words/say.ts";

const OVERHEAD: Dir = [0, 0, 1];
const FINDER = "finder-9x50";

/** How faint the naked eye and a finder reach overhead under a site's sky, V. */
function reachOf(sky: SiteSky): { readonly eyeMag: string; readonly finderMag: string } {
  const seeing = eyeSeeing(zenithConditions(SITE_SKY_MU[sky]), []);
  const limit = (gear: string) => fixed(seeing.star(OVERHEAD, AVERAGE_BV, gear).avertedMilliMag / 1000, 1);
  return { eyeMag: limit("eye"), finderMag: limit(FINDER) };
}

interface Props {
  readonly sky: SiteSky;
  readonly onSky: (sky: SiteSky) => void;
}
export function SkySlider({ sky, onSky }: Props) {
  const id = useId();
  const [first, last] = [SITE_SKIES[0]!, SITE_SKIES.at(-1)!];
  return (
    <>
      <label for={id}>{saySeed("freeSky")}</label>
      <input
        id={id}
        class="brightness"
        type="range"
        min={0}
        max={SITE_SKIES.length - 1}
        value={SITE_SKIES.indexOf(sky)}
        aria-valuetext={siteWords(sky)}
        aria-describedby={`${id}-reach`}
        onInput={({ currentTarget }) => onSky(SITE_SKIES[currentTarget.valueAsNumber] ?? sky)}
      />
      <p class="sky-ends aside" aria-hidden="true">
        <span>{siteWords(first)}</span>
        <span>{siteWords(last)}</span>
      </p>
      <p id={`${id}-reach`} class="sky-reach">
        <b>{saySeed("freeUnderSky", { sky: siteWords(sky) })}</b> {saySeed("freeReach", reachOf(sky))}
      </p>
    </>
  );
}
