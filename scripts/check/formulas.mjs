// Where components, layouts and pages reckon: arithmetic, bounds and borders on quantities of the track, constants of its own. What is found and is no
// drawing belongs in the engine (a formula), in a wizard's result (a choice by it), or in engine/units (a conversion).
import { globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';
import { ROOT } from '../machine.mjs';

/** Names of quantities that only the engine may reckon with. */
const QUANTITY =
  /^(volts?|amps|amperes|ohms|watts|farads|trip|limit|usable|hard|drop|spells|chance|share|load|step|aboveHard|aboveUsable|ghost|ac|dc|takeOver|carries|pulse|voltsA|voltsB|loadA|loadB|limitA|limitB|ohmsPerMetre|probability)$/;
// By number, since some have two names: `<` is the first binary operator too.
const { SyntaxKind: KIND } = ts;
const ARITHMETIC = new Set([
  KIND.PlusToken,
  KIND.MinusToken,
  KIND.AsteriskToken,
  KIND.SlashToken,
  KIND.PercentToken,
  KIND.AsteriskAsteriskToken,
]);
const BORDER = new Set([
  KIND.LessThanToken,
  KIND.LessThanEqualsToken,
  KIND.GreaterThanToken,
  KIND.GreaterThanEqualsToken,
]);
const REDUCES = /^Math\.(min|max|abs|round|floor|ceil|hypot|sqrt)$/;

/** The quantity that an expression stands for, if it is one as it stands: `volts`, `one.volts`, `(x.volts ?? 0)`. */
function quantityIn(node) {
  if (ts.isParenthesizedExpression(node) || ts.isNonNullExpression(node)) return quantityIn(node.expression);
  if (ts.isPrefixUnaryExpression(node)) return quantityIn(node.operand);
  if (ts.isBinaryExpression(node) && node.operatorToken.kind === KIND.QuestionQuestionToken)
    return quantityIn(node.left);
  const name = ts.isPropertyAccessExpression(node) ? node.name : node;
  return ts.isIdentifier(name) && QUANTITY.test(name.text) ? name.text : undefined;
}

const isNumber = (node) => ts.isNumericLiteral(node) || (ts.isPrefixUnaryExpression(node) && isNumber(node.operand));

/** Whether an expression reckons: with a quantity, or compares one with a bare number other than 0. */
function reckons(node) {
  if (ts.isCallExpression(node)) return REDUCES.test(node.expression.getText()) && node.arguments.some(quantityIn);
  if (!ts.isBinaryExpression(node)) return false;
  const { left, right, operatorToken } = node;
  if (ARITHMETIC.has(operatorToken.kind)) return (quantityIn(left) ?? quantityIn(right)) !== undefined;
  if (!BORDER.has(operatorToken.kind)) return false;
  const [measured, border] = isNumber(right) ? [left, right] : [right, left];
  return isNumber(border) && Number(border.getText()) !== 0 && quantityIn(measured) !== undefined;
}

/** A constant that the engine has under the same name, or one that is named after a unit: `STAGE_OHMS = 0.2`. */
function ownConstant(node, engineNames) {
  if (!(ts.isVariableDeclaration(node) && ts.isIdentifier(node.name))) return false;
  const { text } = node.name;
  if (engineNames.has(text)) return true;
  return /_(OHMS|VOLTS|AMPS|WATTS|FARADS|HENRIES|LIMIT|WANTED)$/.test(text);
}

/** Constants that the engine lets out, those of one word aside: such names mean too many things. */
function engineConstants(root) {
  const files = globSync('src/engine/**/*.ts', { cwd: root });
  const names = files.flatMap((file) =>
    [...readFileSync(join(root, file), 'utf8').matchAll(/^export const ([A-Z][A-Z0-9]*_[A-Z0-9_]+)\b/gm)].map(
      ([, name]) => name,
    ),
  );
  return new Set(names);
}

/** The script of a file; of an Astro page all that stands between its fences and in its braces is read as one. */
function scriptOf(file, text) {
  if (!file.endsWith('.astro')) return text;
  const [, script = '', page = ''] = /^---\n([\s\S]*?)\n---\n([\s\S]*)$/.exec(text) ?? [];
  return `${script}\nconst page = <>${page.replace(/<style[\s\S]*?<\/style>|<script[\s\S]*?<\/script>/g, '')}</>;`;
}

/**
 * Every expression that reckons, and every constant that is the engine's, as "file: expression", in the order of files.
 * @param {string} [root] the folder that holds src
 * @returns {{ looked: number, found: string[] }}
 */
export function formulas(root = ROOT) {
  const names = engineConstants(root);
  const files = globSync('src/{components,layouts,pages}/**/*.{ts,tsx,astro}', { cwd: root }).sort();
  const found = files.flatMap((file) => {
    const text = scriptOf(file, readFileSync(join(root, file), 'utf8'));
    const source = ts.createSourceFile(`${file}.tsx`, text, ts.ScriptTarget.Latest, true, ts.ScriptKind.TSX);
    const here = [];
    const look = (node) => {
      if (reckons(node) || ownConstant(node, names)) here.push(`${file}: ${node.getText().replace(/\s+/g, ' ')}`);
      else ts.forEachChild(node, look);
    };
    look(source);
    return here;
  });
  return { looked: files.length, found };
}
