/** A lesson as the page and the score take it: what the schema gives, defaults filled in. Types only, so that no page loads the schema for them. */
import type * as z from "zod/mini";
import type { LessonSchema, MOMENTS, SKILLS } from "./schema.ts";

type Frozen<T> = T extends string | number | boolean | undefined ? T : { readonly [K in keyof T]: Frozen<T[K]> };

export type Lesson = Frozen<z.infer<typeof LessonSchema>>;
export type LessonStage = Lesson["stages"][number];
export type LessonHop = LessonStage["hop"];
/** A star's or object's name, or coordinates with a name. */
export type Spot = LessonHop["anchor"];
export type LessonBody = Lesson["bodies"][number];
export type LessonWay = LessonHop["ways"][number];
export type LessonStep = LessonHop["steps"][number];
export type LessonAfter = LessonHop["after"];
export type LessonPass = Lesson["pass"];
export type Moment = (typeof MOMENTS)[number];
export type Skill = (typeof SKILLS)[number];
