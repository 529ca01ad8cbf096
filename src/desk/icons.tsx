/** The page's own icons: a box of 22 px, one line of 1.5 px, mitred; always named beside. */
const PATHS = {
  turn: ["M4.6 14.4a7 7 0 1 0 1-7.4", "M5.4 3.2v4h4"],
  flip: ["M11 2.5v2.4M11 7.2v2.4M11 11.9v2.4M11 16.6v2.4", "M8 5.6 2.6 16.5H8z", "M14 5.6l5.4 10.9H14z"],
  closer: ["M3 11a8 8 0 1 0 16 0a8 8 0 1 0-16 0", "M8 11a3 3 0 1 0 6 0a3 3 0 1 0-6 0"],
  lamp: ["M5.8 8.6a5.2 5.2 0 1 1 10.4 0a5.2 5.2 0 1 1-10.4 0", "M8.6 13.4v3.4h4.8v-3.4M9.6 19.4h2.8"],
  sound: ["M3 8.5v5h3.4L11 17.2V4.8L6.4 8.5z", "M14 8a4.4 4.4 0 0 1 0 6M16.6 5.4a8 8 0 0 1 0 11.2"],
  silent: ["M3 8.5v5h3.4L11 17.2V4.8L6.4 8.5z", "M14.2 8.4l5 5.2M19.2 8.4l-5 5.2"],
  keys: ["M2.5 5.5h17v11h-17z", "M5.5 9h1.2M9 9h1.2M12.5 9h1.2M16 9h.9M7 13h8"],
  hint: ["M11 3v3M11 16v3M3 11h3M16 11h3", "M10.2 11h1.6"],
  sheet: ["M6.6 3.4 17.4 5.6 15.4 18.6 4.6 16.4z", "M8 11a3 3 0 1 0 6 0a3 3 0 1 0-6 0"],
  back: ["M13.5 4.5 7 11l6.5 6.5"],
  on: ["M8.5 4.5 15 11l-6.5 6.5"],
  pin: ["M11 19v-7", "M7.4 8.4a3.6 3.6 0 1 0 7.2 0a3.6 3.6 0 1 0-7.2 0"],
  pencil: ["M4 18l1-4L15 4l3 3L8 17z", "M13 6l3 3"],
  find: ["M3.4 9.4a6 6 0 1 0 12 0a6 6 0 1 0-12 0", "M13.7 13.7 19 19"],
  beside: [
    "M2 11.6C4.8 7.6 7.8 5.8 11 5.8s6.2 1.8 9 5.8c-2.8 3.6-5.8 5.2-9 5.2s-6.2-1.6-9-5.2z",
    "M12.2 10.4a2.6 2.6 0 1 0 5.2 0a2.6 2.6 0 1 0-5.2 0",
  ],
  close: ["M5 5l12 12M17 5 5 17"],
} as const;
export type IconName = keyof typeof PATHS;

export function Icon({ name }: { name: IconName }) {
  return (
    <svg class="icon" viewBox="0 0 22 22" width="22" height="22" aria-hidden="true">
      {PATHS[name].map((path) => (
        <path key={path} d={path} />
      ))}
    </svg>
  );
}
