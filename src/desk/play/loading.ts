/** Brings in the stars of what is in view, and of what the tube moves towards; gives up what went out of view. */
import { DataFileError } from "#core/seams/errors.ts";
import type { Cone, Resident, StarSource, TileKey } from "#core/seams/index.ts";

const IN_VIEW = 0;
const AHEAD = 1;

/** A tile that is missing or damaged is no reason to stop; anything else is. */
const onlyMissing = (error: unknown): false => {
  if (error instanceof DataFileError) return false;
  throw error;
};

export interface Loading {
  /** Asks for what is missing in view; `version` changes when the list does. */
  bring(missing: readonly TileKey[], version: number): void;
  /** Asks for what lies ahead. */
  ahead(tiles: readonly TileKey[]): void;
  /** Loads all of a cone before it resolves, or all that can be had: a tile that does not come is told by `onChange`. */
  whole(cone: Cone, limitMag: number): Promise<Resident>;
  stop(): void;
}

/**
 * Loads for one view.
 * @param onChange something came, or could not come
 */
export function createLoading(source: StarSource, onChange: () => void): Loading {
  let wantedVersion = -1;
  let inView = new AbortController();
  let aheadOf = new AbortController();
  const end = new AbortController();
  const quietly = (wish: Promise<void>) =>
    void wish.then(onChange, (error: unknown) => {
      if (!(error instanceof DOMException && error.name === "AbortError")) onChange();
    });
  return {
    bring(missing, version) {
      if (missing.length === 0 || version === wantedVersion) return;
      wantedVersion = version;
      const before = inView;
      inView = new AbortController();
      quietly(source.want(missing, IN_VIEW, inView.signal));
      before.abort();
    },
    ahead(tiles) {
      if (tiles.length === 0) return;
      const before = aheadOf;
      aheadOf = new AbortController();
      quietly(source.want(tiles, AHEAD, aheadOf.signal));
      before.abort();
    },
    async whole(cone, limitMag) {
      let resident = source.resident(cone, limitMag);
      for (let tries = 0; resident.missing.length > 0 && tries < 4; tries++) {
        const came = await source.want(resident.missing, IN_VIEW, end.signal).then(() => true, onlyMissing);
        resident = source.resident(cone, limitMag);
        if (came) continue;
        onChange();
        break;
      }
      return resident;
    },
    stop() {
      inView.abort();
      aheadOf.abort();
      end.abort();
    },
  };
}
