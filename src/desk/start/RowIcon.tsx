/** Icons of the contents: a box of 22 px, one line of 1.5 px, mitred. */
const PATHS = {
  free: ["M3 11a8 8 0 1 0 16 0a8 8 0 1 0-16 0", "M6.5 14.2 9.4 9.6l2.6 2.6 3.6-4.6"],
  daily: [
    "M3 11a8 8 0 1 0 16 0a8 8 0 1 0-16 0",
    "M11 3v16M11 5.4h5.4M11 7.6h6.8M11 9.8h7.6M11 12h7.6M11 14.2h6.9M11 16.4h5.6",
  ],
  lessons: [
    "M4 16.5 8.5 8l5 4L18 4.5",
    "M2.4 16.5a1.6 1.6 0 1 0 3.2 0a1.6 1.6 0 1 0-3.2 0",
    "M6.9 8a1.6 1.6 0 1 0 3.2 0a1.6 1.6 0 1 0-3.2 0",
    "M11.9 12a1.6 1.6 0 1 0 3.2 0a1.6 1.6 0 1 0-3.2 0",
    "M16.4 4.5a1.6 1.6 0 1 0 3.2 0a1.6 1.6 0 1 0-3.2 0",
  ],
  bench: ["M4.5 9.2 11 3.4l6.5 5.8V19h-13z", "M8.9 12.4a2.1 2.1 0 1 0 4.2 0a2.1 2.1 0 1 0-4.2 0"],
  own: ["M3.5 13v5.5h15V13", "M11 3v10.5M7 9.8l4 4 4-4"],
  screen: ["M3 4.5h16v10.5H3z", "M7.5 18.5h7M11 15v3.5"],
  language: ["M3 4h16v11.5h-8L7 19v-3.5H3z", "M6.5 8h9M6.5 11.5h6"],
  logbook: ["M4 3h14v16H4z", "M7.6 3v16", "M10.6 7.5h4.6M10.6 11h4.6"],
} as const;

export function RowIcon({ name }: { name: keyof typeof PATHS }) {
  return (
    <svg class="icon" viewBox="0 0 22 22" width="22" height="22" aria-hidden="true">
      {PATHS[name].map((path) => (
        <path key={path} d={path} />
      ))}
    </svg>
  );
}
