import { AppError } from "#core/seams/errors.ts";

/** Arguments or a file that cannot be used; `place` where a file is to be blamed. */
export class UsageError extends AppError {
  override readonly name = "UsageError";
  readonly code: string;
  readonly place: { readonly file: string; readonly line?: number; readonly column?: number } | undefined;
  constructor(code: string, message: string, hint: string, place?: UsageError["place"]) {
    super(message, hint);
    this.code = code;
    this.place = place;
  }
}
