/** No page says anything that is not in the words. */
import ts from 'typescript';
import { expect, test } from 'vitest';

const pages = import.meta.glob<string>('../**/*.tsx', { query: '?raw', import: 'default', eager: true });
/** Attributes that people read or hear. */
const HEARD = new Set([
  'aria-label',
  'aria-description',
  'aria-roledescription',
  'aria-valuetext',
  'title',
  'alt',
  'placeholder',
  'label',
]);
/** Names of languages, in their own words; units and marks that no language changes. */
const FREE = /^(English|Español|°[CF]?|[\p{P}\p{S}\s\d]*|kB|d|h|px)$/u;

const hasWords = (text: string) => /\p{L}/u.test(text) && !FREE.test(text.trim());

function bypassing([file, text]: readonly [string, string]): string[] {
  const tree = ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true, ts.ScriptKind.TSX);
  const found: string[] = [];
  const note = (node: ts.Node, said: string) => {
    const { line } = tree.getLineAndCharacterOfPosition(node.getStart());
    if (hasWords(said)) found.push(`${file}:${line + 1}: ${said.trim()}`);
  };
  const literals = (node: ts.Node): void => {
    if (ts.isStringLiteral(node) || ts.isNoSubstitutionTemplateLiteral(node)) note(node, node.text);
    else if (ts.isTemplateExpression(node)) {
      note(node, node.head.text);
      for (const span of node.templateSpans) note(span.literal, span.literal.text);
    } else if (ts.isConditionalExpression(node)) {
      literals(node.whenTrue);
      literals(node.whenFalse);
    } else if (ts.isBinaryExpression(node)) {
      if (node.operatorToken.kind !== ts.SyntaxKind.EqualsEqualsEqualsToken) {
        if (node.operatorToken.kind === ts.SyntaxKind.PlusToken) literals(node.left);
        literals(node.right);
      }
    } else if (ts.isParenthesizedExpression(node)) literals(node.expression);
  };
  const visit = (node: ts.Node): void => {
    if (ts.isJsxText(node)) note(node, node.text);
    if (ts.isJsxExpression(node) && node.expression && !ts.isJsxAttribute(node.parent)) literals(node.expression);
    if (ts.isJsxAttribute(node) && HEARD.has(node.name.getText()) && node.initializer) {
      if (ts.isStringLiteral(node.initializer)) note(node, node.initializer.text);
      else if (ts.isJsxExpression(node.initializer) && node.initializer.expression) literals(node.initializer.expression);
    }
    ts.forEachChild(node, visit);
  };
  visit(tree);
  return found;
}

test('pages take every text and every accessible name from the words', () => {
  expect(Object.keys(pages).length).toBeGreaterThan(40);
  expect(Object.entries(pages).flatMap(bypassing)).toEqual([]);
});
