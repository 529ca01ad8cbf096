/**
 * Makes the sounds of the page from nothing but arithmetic: `node src/tools/makeSounds.mjs` writes assets/sounds/*.wav, the
 * same bytes each time. Wood, paper, air; nothing over -18 dBFS.
 */
import { mkdirSync, writeFileSync } from "node:fs";
import { at } from "./run.mjs";

const CEILING = 10 ** (-18 / 20);
const TURN = 2 * Math.PI;

/** Noise in -1 .. 1 from a fixed seed (Park and Miller 1988), so that every run writes the same file. */
const noiseFrom = (seed) => {
  let state = seed;
  return () => {
    state = (state * 16807) % 2147483647;
    return state / 1073741823.5 - 1;
  };
};

/** One-pole low pass: keeps what lies under the corner. */
const lowPass = (rate, cornerHz) => {
  const keep = 1 - Math.exp((-TURN * cornerHz) / rate);
  let value = 0;
  return (input) => {
    value += keep * (input - value);
    return value;
  };
};

const make = (rate, seconds, sampleAt) => ({
  rate,
  samples: Float64Array.from({ length: Math.round(rate * seconds) }, (_, i) => sampleAt(i / rate, i)),
});

const scaled = ({ rate, samples }, peakDb) => {
  const most = samples.reduce((peak, one) => Math.max(peak, Math.abs(one)), 1e-9);
  const gain = Math.min(CEILING, 10 ** (peakDb / 20)) / most;
  return { rate, samples: samples.map((one) => one * gain) };
};

/** The end runs into the beginning, so that a loop has no seam. */
const looped = ({ rate, samples }, overlapSeconds) => {
  const overlap = Math.round(rate * overlapSeconds);
  const length = samples.length - overlap;
  const blended = samples.slice(0, length);
  for (let i = 0; i < overlap; i++) {
    const share = i / overlap;
    blended[i] = samples[i] * Math.sqrt(share) + samples[length + i] * Math.sqrt(1 - share);
  }
  return { rate, samples: blended };
};

const decay = (seconds, halfLife) => 0.5 ** (seconds / halfLife);
const attack = (seconds, length) => Math.min(1, seconds / length);
const tone = (seconds, hz) => Math.sin(TURN * hz * seconds);

/** A struck block of wood: a low tone with two overtones that die sooner. */
const knock = (hz, seconds, halfLife) =>
  make(
    22050,
    seconds,
    (t) =>
      attack(t, 0.002) *
      (tone(t, hz) * decay(t, halfLife) +
        0.4 * tone(t, hz * 2.76) * decay(t, halfLife / 3) +
        0.2 * tone(t, hz * 5.4) * decay(t, halfLife / 6)),
  );

/** Paper or cloth: noise in a band, swelling and gone. */
const rustle = (seed, seconds, lowHz, highHz, swell) => {
  const noise = noiseFrom(seed);
  const high = lowPass(22050, highHz);
  const low = lowPass(22050, lowHz);
  return make(22050, seconds, (t) => {
    const value = high(noise());
    return (value - low(value)) * swell(t / seconds);
  });
};

const wind = () => {
  const noise = noiseFrom(4711);
  const soft = lowPass(6000, 420);
  const softer = lowPass(6000, 700);
  return make(6000, 44, (t) => softer(soft(noise())) * (0.62 + 0.25 * tone(t, 1 / 13) + 0.13 * tone(t, 1 / 7.3)));
};

/** The tube on its bearings: a short loop of soft noise; its pitch follows the speed. */
const rub = () => {
  const noise = noiseFrom(97);
  const soft = lowPass(11025, 260);
  return make(11025, 2.4, (t) => soft(noise()) * (0.8 + 0.2 * tone(t, 5)));
};

const SOUNDS = {
  night: () => scaled(looped(wind(), 4), -38),
  mount: () => scaled(looped(rub(), 0.4), -30),
  waymark: () => scaled(knock(220, 0.3, 0.03), -20),
  change: () => scaled(knock(130, 0.25, 0.022), -22),
  sheet: () =>
    scaled(
      rustle(31, 0.35, 500, 4000, (x) => Math.sin(Math.PI * x) ** 2),
      -28,
    ),
  flip: () =>
    scaled(
      rustle(53, 0.42, 900, 7000, (x) => Math.sin(Math.PI * Math.sqrt(x)) ** 3),
      -26,
    ),
  pencil: () =>
    scaled(
      rustle(71, 0.5, 1500, 6000, (x) => Math.abs(Math.sin(3 * Math.PI * x)) * (1 - x)),
      -28,
    ),
  tick: () => scaled(knock(900, 0.08, 0.006), -22),
  right: () =>
    scaled(
      make(
        22050,
        1.4,
        (t) =>
          attack(t, 0.02) * tone(t, 147) * decay(t, 0.22) +
          (t > 0.3 ? attack(t - 0.3, 0.02) * tone(t - 0.3, 220) * decay(t - 0.3, 0.22) : 0),
      ),
      -20,
    ),
};

const wav = ({ rate, samples }) => {
  const file = Buffer.alloc(44 + samples.length * 2);
  file.write("RIFF", 0);
  file.writeUInt32LE(36 + samples.length * 2, 4);
  file.write("WAVEfmt ", 8);
  file.writeUInt32LE(16, 16);
  file.writeUInt16LE(1, 20);
  file.writeUInt16LE(1, 22);
  file.writeUInt32LE(rate, 24);
  file.writeUInt32LE(rate * 2, 28);
  file.writeUInt16LE(2, 32);
  file.writeUInt16LE(16, 34);
  file.write("data", 36);
  file.writeUInt32LE(samples.length * 2, 40);
  samples.forEach((one, i) => {
    file.writeInt16LE(Math.round(one * 32767), 44 + i * 2);
  });
  return file;
};

mkdirSync(at("assets", "sounds"), { recursive: true });
for (const [name, sound] of Object.entries(SOUNDS)) writeFileSync(at("assets", "sounds", `${name}.wav`), wav(sound()));
