/** Errors told apart by who can act; `code` is stable, `hint` says how to mend it. Bugs stay plain Error. */
export abstract class AppError extends Error {
  abstract readonly code: string;
  readonly hint: string;
  constructor(message: string, hint: string) {
    super(message);
    this.hint = hint;
  }
}
/** A data file is not what its header says. Loading it again may help; repeating the call does not. */
export class DataFileError extends AppError {
  override readonly name = "DataFileError";
  readonly code = "DATA_FILE";
}
/** A value from outside lies beyond what the function documents. */
export class InputError extends AppError {
  override readonly name = "InputError";
  readonly code = "INPUT";
}
