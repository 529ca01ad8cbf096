/**
 * Keeps core pure and the deciding rooms exact.
 * Core: no clock, no chance. Deciding rooms: only + - * / and the Math functions that every engine rounds alike, since
 * sin, exp, pow and their kin differ in the last bit between engines, and a decision must not.
 */
import { readdirSync, readFileSync, statSync } from "node:fs";
import { join, relative } from "node:path";
import ts from "typescript";
import { at, ROOT } from "./run.mjs";

const SAME_EVERYWHERE = new Set(
  "abs ceil clz32 floor fround imul max min round sign sqrt trunc E LN2 LN10 LOG2E LOG10E PI SQRT2 SQRT1_2".split(" "),
);
const DECIDING = [
  /^src\/core\/sky\/(practice|catalogue)\//,
  /^src\/core\/(score|eye)\//,
  /^src\/core\/session\/(claim|record|codec|checksum|trail)/,
  /^src\/core\/celestial\/(exact\w*|vector|healpix|hash)\.ts$/,
];
const LONGEST = 350;

const filesOf = (folder) =>
  readdirSync(folder).flatMap((name) => {
    const path = join(folder, name);
    return statSync(path).isDirectory() ? filesOf(path) : /\.(ts|tsx|mjs)$/.test(name) ? [path] : [];
  });

const faultOf = (node, deciding) => {
  const text = node.getText();
  if (ts.isPropertyAccessExpression(node)) {
    if (text === "Math.random" || text === "Date.now" || text === "performance.now")
      return `${text}: core has no clock and no chance`;
    if (deciding && node.expression.getText() === "Math" && !SAME_EVERYWHERE.has(node.name.text))
      return `${text} differs between engines: use celestial/exactMath`;
  }
  if (ts.isNewExpression(node) && node.expression.getText() === "Date" && !node.arguments?.length)
    return "new Date() reads the clock: take the time as an argument";
  if (deciding && ts.isBinaryExpression(node) && node.operatorToken.kind === ts.SyntaxKind.AsteriskAsteriskToken)
    return "** is pow, which differs between engines: use celestial/exactMath";
  if (deciding && ts.isIdentifier(node) && text === "Math" && !ts.isPropertyAccessExpression(node.parent))
    return "Math passed on or taken apart: the check cannot see what is used";
  return null;
};

const checkCore = (path, name) => {
  const source = ts.createSourceFile(path, readFileSync(path, "utf8"), ts.ScriptTarget.Latest, true);
  const deciding = DECIDING.some((room) => room.test(name));
  const faults = [];
  const visit = (node) => {
    const fault = faultOf(node, deciding);
    if (fault) faults.push(`${name}:${source.getLineAndCharacterOfPosition(node.getStart()).line + 1} ${fault}`);
    ts.forEachChild(node, visit);
  };
  visit(source);
  return faults;
};

/** @returns {{files: number, deciding: number, faults: string[]}} what was read and what is wrong, a line each */
export function checkPurity() {
  const all = filesOf(at("src")).map((path) => ({ path, name: relative(ROOT, path).replaceAll("\\", "/") }));
  const long = all
    .map(({ path, name }) => ({ name, lines: readFileSync(path, "utf8").split("\n").length - 1 }))
    .filter(({ lines }) => lines > LONGEST)
    .map(({ name, lines }) => `${name} has ${lines} lines, over ${LONGEST}: it is two rooms`);
  const core = all.filter(({ name }) => name.startsWith("src/core/"));
  return {
    files: all.length,
    deciding: core.filter(({ name }) => DECIDING.some((room) => room.test(name))).length,
    faults: [...long, ...core.flatMap(({ path, name }) => checkCore(path, name))],
  };
}
