/** Tools of the sheet: 22 px box, 1.5 px line, mitred. */
const PATHS = {
  flip: ["M11 2.5v17", "M8 5.5 2.5 16.5H8zM14 5.5l5.5 11H14z"],
  turn: ["M4.5 14.5a7 7 0 1 0 1.2-7.6", "M5.6 3.2v4h4"],
  closer: ["M3 11a8 8 0 1 0 16 0a8 8 0 1 0-16 0", "M8 11a3 3 0 1 0 6 0a3 3 0 1 0-6 0"],
  pin: ["M11 19.5V12.6", "M6.6 8.2a4.4 4.4 0 1 0 8.8 0a4.4 4.4 0 1 0-8.8 0"],
  pencil: ["M3 19l1.2-4.6L15.4 3.2l3.4 3.4L7.6 17.8z", "M13 5.6l3.4 3.4"],
  rubOut: ["M3.5 13.5 12 5l6 6-6.5 6.5H7.5z", "M8 9.2l6 6", "M6 19h12.5"],
  ruler: ["M2.5 14.2 14.2 2.5l5.3 5.3L7.8 19.5z", "M6 10.7l2 2M9 7.7l2.6 2.6M12 4.7l2 2"],
  legend: ["M3 5.5h2M3 11h2M3 16.5h2", "M8.5 5.5H19M8.5 11H19M8.5 16.5H19"],
} as const;
export type SheetIconName = keyof typeof PATHS;

export function SheetIcon({ name }: { readonly name: SheetIconName }) {
  return (
    <svg class="icon" viewBox="0 0 22 22" aria-hidden="true">
      {PATHS[name].map((d, i) => (
        <path key={d} d={d} {...(name === "flip" && i === 0 ? { "stroke-dasharray": "2 2.2" } : {})} />
      ))}
    </svg>
  );
}
