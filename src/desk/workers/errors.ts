/** Errors on their way between threads: code and hint arrive, and `instanceof` still tells who can act. */
import { AppError, DataFileError, InputError } from "#core/seams/errors.ts";
import type { PlainError } from "./methods.ts";

export const plainErrorOf = (error: unknown): PlainError => {
  if (error instanceof AppError)
    return { name: error.name, message: error.message, code: error.code, hint: error.hint };
  if (error instanceof Error) return { name: error.name, message: error.message, code: "", hint: "" };
  return { name: "Error", message: String(error), code: "", hint: "" };
};

/** The error that was thrown over there, made again here. */
export function errorOf({ name, message, code, hint }: PlainError): Error {
  if (code === "DATA_FILE") return new DataFileError(message, hint);
  if (code === "INPUT") return new InputError(message, hint);
  if (name === "AbortError") return new DOMException(message, "AbortError");
  return Object.assign(new Error(message), { name });
}

export const workerStopped = () => new Error("The worker stopped: load the page again.");
export const cancelled = () => new DOMException("The call was cancelled.", "AbortError");
