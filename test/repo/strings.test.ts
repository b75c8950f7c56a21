import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { files, read } from './files.ts';

const parsed = (file: string) => ts.createSourceFile(file, read(file), ts.ScriptTarget.Latest, true);
const TEXTS = files.filter((file) => /^src\/text\/[\w-]+\.ts$/.test(file));
const CODE = files.filter((file) => /^(src|sims)\/.*\.ts$/.test(file));
const COMPONENTS = files.filter((file) => /^src\/(components|app)\/.*\.ts$/.test(file));

/** A name of something that can be said: an export, or a part of an exported record, with all names above it. */
interface Said {
  readonly file: string;
  readonly path: readonly string[];
}

const nameOf = (name: ts.PropertyName | ts.BindingName): string =>
  ts.isIdentifier(name) || ts.isStringLiteralLike(name) || ts.isNumericLiteral(name) ? name.text : '';

/** The record behind `as const`, `satisfies` and brackets. */
function recordIn(node: ts.Expression | undefined): ts.ObjectLiteralExpression | undefined {
  if (!node) return undefined;
  if (ts.isAsExpression(node) || ts.isSatisfiesExpression(node) || ts.isParenthesizedExpression(node)) return recordIn(node.expression);
  return ts.isObjectLiteralExpression(node) ? node : undefined;
}

/** What a file of words exports, and the names inside its records: a record looked up by a key that is not written out counts as a whole. */
function saidIn(file: string): Said[] {
  const within = (path: readonly string[], value: ts.Expression | undefined, typed: boolean): Said[] => {
    const record = typed ? undefined : recordIn(value);
    return [
      { file, path },
      ...(record?.properties ?? []).flatMap((property) =>
        (ts.isPropertyAssignment(property) || ts.isMethodDeclaration(property) || ts.isShorthandPropertyAssignment(property)) && nameOf(property.name) !== ''
          ? within([...path, nameOf(property.name)], ts.isPropertyAssignment(property) ? property.initializer : undefined, false)
          : [],
      ),
    ];
  };
  const isExported = (node: ts.Node) => ts.canHaveModifiers(node) && (ts.getModifiers(node) ?? []).some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword);
  return parsed(file).statements.flatMap((statement): Said[] => {
    if (!isExported(statement)) return [];
    if (ts.isFunctionDeclaration(statement) && statement.name) return [{ file, path: [statement.name.text] }];
    if (!ts.isVariableStatement(statement)) return [];
    return statement.declarationList.declarations.flatMap(({ name, initializer, type }) => within([nameOf(name)], initializer, type !== undefined));
  });
}

/** Names that code uses: words of imports and expressions, and keys that are looked up as text. */
const used = new Set<string>();
for (const file of CODE) {
  const visit = (node: ts.Node): void => {
    const { parent } = node;
    const names = ts.isPropertyAssignment(parent) || ts.isMethodDeclaration(parent) || ts.isVariableDeclaration(parent) || ts.isFunctionDeclaration(parent);
    const isDefinition = names && parent.name === node;
    if ((ts.isIdentifier(node) || ts.isStringLiteralLike(node)) && !isDefinition) used.add(node.text);
    ts.forEachChild(node, visit);
  };
  ts.forEachChild(parsed(file), visit);
}
/** Keys that documents, settings and other records of the code have: words by such a key are looked up by it. */
const keys = new Set(
  CODE.filter((file) => !file.startsWith('src/text/')).flatMap((file) =>
    [...read(file).matchAll(/(?<![\w.])['"]?([A-Za-z][\w-]*)['"]?\??(?=:\s)/g)].map(([, key = '']) => key),
  ),
);

/** Whether words are there at all, which only a test asks. */
const ASKED_BY_TESTS = new Set(['hasFormWords']);

describe('words of the page', () => {
  it('stand in files of words, and there are many', () => {
    expect(TEXTS.length).toBeGreaterThan(30);
    expect(TEXTS.flatMap(saidIn).length).toBeGreaterThan(600);
  });

  it.each(TEXTS)('%s: what it exports is used', (file) => {
    const exports = saidIn(file).filter(({ path }) => path.length === 1);
    expect(exports.filter(({ path: [name = ''] }) => !used.has(name) && !ASKED_BY_TESTS.has(name)).map(({ path }) => path.join('.'))).toEqual([]);
  });

  it.each(TEXTS)('%s: each of its words is used', (file) => {
    const parts = saidIn(file).filter(({ path }) => path.length > 1);
    const unused = parts.filter(({ path }) => {
      const name = path.at(-1) ?? '';
      return !used.has(name) && !keys.has(name);
    });
    expect(unused.map(({ path }) => path.join('.'))).toEqual([]);
  });
});

/** Texts in templates that are the same in every language: units and signs, and the product's own name. */
const NO_WORDS = /^(?:[\d\s\p{P}\p{S}]|px|mm|kg|SVG|PNG|CSV|×)*$/u;

/** What a reader sees of the fixed parts of a template: its texts, and what attributes say. */
function wordsOf(template: string): string[] {
  const bare = template.replace(/<!--[\s\S]*?-->/g, '').replace(/<style>[\s\S]*?<\/style>/g, '');
  const texts = bare.replace(/<[^>]*>/g, '\n').split('\n');
  const attributes = [...bare.matchAll(/\s(?:aria-label|title|placeholder|alt|aria-valuetext|aria-roledescription)="([^"\u0000]+)"/g)].map(
    ([, words = '']) => words,
  );
  return [...texts, ...attributes].map((text) => text.replaceAll('\u0000', ' ').replace(/&\w+;/g, ' ').trim()).filter((text) => !NO_WORDS.test(text));
}

/** Words written into templates of a file. */
function literalsIn(source: ts.SourceFile): string[] {
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isTaggedTemplateExpression(node) && /^(html|svg)$/.test(node.tag.getText(source))) {
      const { template } = node;
      const text = ts.isNoSubstitutionTemplateLiteral(template)
        ? template.text
        : [template.head.text, ...template.templateSpans.map(({ literal }) => literal.text)].join('\u0000');
      found.push(...wordsOf(text));
      // Words chosen between in a place that is read: html`… ${wrong ? 'to mend' : ''}`; what stands inside a tag is an attribute.
      if (ts.isTemplateExpression(template)) {
        let before = template.head.text;
        for (const { expression, literal } of template.templateSpans) {
          const inTag = before.lastIndexOf('<') > before.lastIndexOf('>');
          const branches = ts.isConditionalExpression(expression) ? [expression.whenTrue, expression.whenFalse] : [expression];
          if (!inTag)
            found.push(
              ...branches
                .filter(ts.isStringLiteralLike)
                .map(({ text: words }) => words)
                .filter((words) => !NO_WORDS.test(words)),
            );
          before += `\u0000${literal.text}`;
        }
      }
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

describe('templates', () => {
  it('hold no words of their own', () => {
    expect(COMPONENTS.length).toBeGreaterThan(100);
    const found = COMPONENTS.flatMap((file) => literalsIn(parsed(file)).map((words) => `${file}: ${words}`));
    expect(found).toEqual([]);
  });

  it('would show theirs', () => {
    const source = ts.createSourceFile(
      'x.ts',
      'const x = html`<p title="Read me" class=${bad ? "a" : "b"}>Loose words ${bad ? "to mend" : ""}${words.fine} <b>4 %</b></p>`;',
      ts.ScriptTarget.Latest,
      true,
    );
    expect(literalsIn(source)).toEqual(['Loose words', 'Read me', 'to mend']);
  });
});
