/**
 * Records: an attempt as it is stored, scored and handed on. JSON text with the trail as differences, about a kilobyte
 * deflated for five minutes. The checksum finds damage, not lies: a changed record is still a legal trail.
 */
import { crc32 } from "#core/celestial/hash.ts";
import { DAS_RAD } from "#core/celestial/vector.ts";
import { InputError } from "#core/seams/errors.ts";
import type { AttemptRecord, Trail } from "#core/seams/index.ts";
import { compiledShape, eventShape } from "./recordShapes.ts";
import { int, list, object, oneOf, refuse } from "./shape.ts";
import { POSE, type Session } from "./state.ts";
import { trailOfRecorder } from "./trail.ts";
import { packTrail, unpackTrail } from "./trailCodec.ts";

/** Goes into `compiled.versions.record`; grows when an older reader could no longer read. */
export const RECORD_VERSION = 1;
const FORMAT = "faintward-record";
/** Bounds of what is read: far beyond any attempt, small enough to be refused or read in a moment. */
const LONGEST_TEXT = 4_000_000;
const MOST_EVENTS = 50_000;

type Unsigned = Omit<AttemptRecord, "checksum">;

/** The attempt so far, ready to be stored or scored. */
export function record(session: Session): AttemptRecord {
  return signed({
    compiled: session.compiled,
    events: [...session.events],
    trail: trailOfRecorder(session.recorder),
    lengthBeforeDas: Math.round(session.pose[POSE.beforeRad]! / DAS_RAD),
  });
}

/** A record with the checksum of what it holds. */
export function signed(unsigned: Unsigned): AttemptRecord {
  return { ...unsigned, checksum: checksumOf(unsigned) };
}

/** CRC-32 over the canonical text (keys sorted, whole numbers alone) of everything but the checksum. */
export function checksumOf({ compiled, events, trail, lengthBeforeDas }: Unsigned): number {
  const canonical = canonicalText({ compiled, events, trail, lengthBeforeDas });
  const bytes = new Uint8Array(canonical.length * 2);
  for (let i = 0; i < canonical.length; i++) {
    const unit = canonical.charCodeAt(i);
    bytes[2 * i] = unit & 255;
    bytes[2 * i + 1] = unit >> 8;
  }
  return crc32(bytes);
}

/** True where a record is as it was written. */
export function checksumFits(whole: AttemptRecord): boolean {
  return checksumOf(whole) === whole.checksum;
}

/** JSON with sorted keys, undefined left out and typed arrays as lists, so that the same record always gives the same text. */
function canonicalText(value: unknown): string {
  if (ArrayBuffer.isView(value)) return canonicalText(Array.from(value as Int32Array));
  if (Array.isArray(value)) return `[${value.map(canonicalText).join(",")}]`;
  if (typeof value !== "object" || value === null) return JSON.stringify(value);
  const entries = Object.entries(value).filter(([, each]) => each !== undefined);
  entries.sort(([a], [b]) => (a < b ? -1 : 1));
  return `{${entries.map(([key, each]) => `${JSON.stringify(key)}:${canonicalText(each)}`).join(",")}}`;
}

/** JSON text of a record; the same record always gives the same text. */
export function encodeRecord({ trail, ...rest }: AttemptRecord): string {
  return canonicalText({ format: FORMAT, version: RECORD_VERSION, ...rest, trail: packTrail(trail) });
}

/**
 * Reads the JSON text of a record, every value checked. The checksum is read, not compared: see {@link checksumFits}.
 * @throws InputError where the text is too long, no JSON, of another format or version, or holds a value out of bounds or
 *   an event of an unknown kind
 */
export function decodeRecord(jsonText: string): AttemptRecord {
  if (jsonText.length > LONGEST_TEXT) refuse("record", `is longer than ${LONGEST_TEXT} characters`);
  const head = fileHead(parse(jsonText), "record");
  return {
    compiled: compiledShape(head.compiled, "compiled"),
    events: inOrder(list(eventShape, MOST_EVENTS)(head.events, "events")),
    trail: unpackTrail(head.trail),
    lengthBeforeDas: head.lengthBeforeDas,
    checksum: head.checksum,
  };
}

/** The trail of a record: the very places that the session recorded, so that a replay is the run. */
export function trailOf({ trail }: AttemptRecord): Trail {
  return trail;
}

function parse(jsonText: string): unknown {
  try {
    return JSON.parse(jsonText);
  } catch (cause) {
    throw new InputError(`record is no JSON: ${(cause as Error).message}`, "Give the file that the page saved.");
  }
}

const anything = (value: unknown) => value;
const fileHead = object({
  format: oneOf([FORMAT]),
  version: oneOf([RECORD_VERSION]),
  compiled: anything,
  events: anything,
  trail: anything,
  lengthBeforeDas: int(0, 2_147_483_647),
  checksum: int(0, 0xffffffff),
});

function inOrder<E extends { readonly tMs: number }>(events: E[]): E[] {
  events.forEach((event, i) => {
    if (i > 0 && event.tMs < events[i - 1]!.tMs) refuse(`events[${i}]`, "comes before the one before it");
  });
  return events;
}
