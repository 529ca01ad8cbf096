/** Words of a night that was set to another hour. */
export const EN_HOURS = {
  /** Sought, or where one starts. */
  down: "At {time} {name} is below the horizon. The hop cannot start.",
  unseen: "At {time} {name} would not be seen: too much light, or too low.",
  written: "What is said here was written for {time}.",
  back: "Back to {time}",
  missing: "The night at {time} did not come: {why}",
} as const;
