/** What the build needs of core to check lessons, in one module. */
export { checkLesson } from "#core/lesson/format.ts";
export { realLookups } from "#core/lesson/realLookups.ts";
