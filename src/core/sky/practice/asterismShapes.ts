/** Small figures that people find in a handful of stars, and what those of the Sallowfell world call them: made up by us. */

export type AsterismShape = {
  /** Each is given to one figure of a sky at most. */
  readonly names: readonly string[];
  readonly looks: string;
  /** Places of its stars in half lengths: along it from -1 to 1, and across. */
  readonly places: readonly (readonly [along: number, across: number])[];
};

export const ASTERISM_SHAPES: readonly AsterismShape[] = [
  {
    names: ["Stepping Stones", "Washing Line", "Fence Posts"],
    looks: "Six stars in a row, as if somebody had set them down one by one.",
    places: [
      [-1, 0.04],
      [-0.61, -0.05],
      [-0.2, 0.05],
      [0.2, -0.03],
      [0.6, 0.06],
      [1, -0.05],
    ],
  },
  {
    names: ["Bent Nail", "Drainpipe", "Walking Stick"],
    looks: "Five stars in a line, and two that bend back from its end.",
    places: [
      [-1, 0],
      [-0.56, 0.03],
      [-0.1, -0.03],
      [0.35, 0.02],
      [0.78, 0],
      [1, 0.26],
      [0.82, 0.5],
    ],
  },
  {
    names: ["Bucket Handle", "Cart Tyre", "Apple Peel"],
    looks: "Six stars along a half circle.",
    places: [
      [-1, -0.42],
      [-0.78, 0.12],
      [-0.3, 0.46],
      [0.28, 0.47],
      [0.77, 0.14],
      [1, -0.4],
    ],
  },
  {
    names: ["Duck Walk", "Bootlace", "Cracked Plate"],
    looks: "Six stars that go from side to side.",
    places: [
      [-1, -0.24],
      [-0.58, 0.24],
      [-0.2, -0.25],
      [0.2, 0.25],
      [0.6, -0.23],
      [1, 0.24],
    ],
  },
  {
    names: ["Dovecote", "Hen House", "Dog Kennel"],
    looks: "Four stars as a box, and a fifth for its roof.",
    places: [
      [-1, -0.55],
      [-1, 0.55],
      [0.25, -0.57],
      [0.25, 0.56],
      [1, 0],
    ],
  },
  {
    names: ["Clothes Prop", "Split Kindling", "Toasting Fork"],
    looks: "Four stars in a line that parts in two.",
    places: [
      [-1, 0],
      [-0.55, 0.03],
      [-0.1, -0.03],
      [0.3, 0.02],
      [0.68, 0.26],
      [0.66, -0.27],
      [1, 0.47],
      [1, -0.48],
    ],
  },
  {
    names: ["Kitchen Window", "Field Gate", "Shirt Button"],
    looks: "Four stars as a square.",
    places: [
      [-0.72, -0.7],
      [-0.7, 0.72],
      [0.72, -0.71],
      [0.7, 0.7],
    ],
  },
  {
    names: ["Kettle Stain", "Cake Tin", "Napkin Hoop"],
    looks: "Eight stars in a ring with nothing in it.",
    places: [
      [-1, 0],
      [-0.7, 0.66],
      [-0.04, 0.95],
      [0.68, 0.69],
      [1, 0.03],
      [0.7, -0.67],
      [0.02, -0.96],
      [-0.69, -0.67],
    ],
  },
  {
    names: ["Cattle Grid", "Cart Ruts", "Two Rows of Beans"],
    looks: "Two rows of four stars side by side.",
    places: [
      [-1, -0.24],
      [-0.97, 0.24],
      [-0.34, -0.25],
      [-0.32, 0.23],
      [0.33, -0.23],
      [0.35, 0.25],
      [1, -0.25],
      [0.98, 0.23],
    ],
  },
  {
    names: ["Ninepins", "Flour Heap", "Skein of Geese"],
    looks: "Stars that stand as ninepins do: one, two, three and three more.",
    places: [
      [1, 0],
      [0.42, 0.3],
      [0.4, -0.31],
      [-0.2, 0.6],
      [-0.2, 0],
      [-0.2, -0.61],
      [-0.9, 0.75],
      [-0.9, 0.02],
      [-0.92, -0.74],
    ],
  },
];
