import { expect, it } from "vitest";
import { lessonJsonSchema } from "#core/lesson/shape.ts";

it("gives editors the schema of shared/lesson.schema.json (mend it with npx vitest run tests/unit/lesson/schema.test.ts -u)", async () => {
  await expect(`${JSON.stringify(lessonJsonSchema(), null, 2)}\n`).toMatchFileSnapshot(
    "../../../shared/lesson.schema.json",
  );
});
