/**
 * Findings in the Static Analysis Results Interchange Format, for services that gather them:
 * OASIS, SARIF version 2.1.0. Hints are for the text alone and left out.
 */
import { type LocatedFinding, type LocatedFix, messageOf, type Range } from '../api/located.ts';
import type { Severity } from '../rules/rule.ts';
import type { ExplainedRule } from './explain.ts';
import { inertLine } from './inert.ts';
import { print } from './json.ts';
import type { ReportedFile } from './text.ts';

const LEVELS = {
  error: 'error',
  warning: 'warning',
  note: 'note',
  hint: 'none',
} as const satisfies Record<Severity, string>;

export function sarifReport(
  files: readonly ReportedFile[],
  rules: readonly ExplainedRule[],
  version: string,
): string {
  const index = new Map(rules.map(({ name }, at) => [name, at]));
  const results = files.flatMap((file) =>
    file.findings
      .filter(({ finding }) => finding.severity !== 'hint')
      .map(({ finding, fixes }) => resultOf(file, finding, fixes, index.get(finding.rule))),
  );
  const log = {
    $schema: 'https://json.schemastore.org/sarif-2.1.0.json',
    version: '2.1.0',
    runs: [
      {
        tool: { driver: { name: 'Lamella', version, rules: rules.map(ruleOf) } },
        columnKind: 'utf16CodeUnits',
        artifacts: files.map(({ name }) => ({ location: { uri: uriOf(name) } })),
        results,
      },
    ],
  };
  return print(log);
}

const ruleOf = ({ name, severity, docs }: ExplainedRule) => ({
  id: name,
  shortDescription: { text: text(`Fires when ${docs.when}`) },
  fullDescription: { text: text(docs.why) },
  help: { text: text(docs.remedy) },
  defaultConfiguration: { level: LEVELS[severity] },
});

function resultOf(
  file: ReportedFile,
  finding: LocatedFinding,
  fixes: readonly LocatedFix[],
  ruleIndex: number | undefined,
) {
  const nameIn = (at: string): string => (at === finding.file ? file.name : file.nameOf(at));
  const { rule, severity, range, shot, related } = finding;
  return {
    ruleId: rule,
    ...(ruleIndex !== undefined && { ruleIndex }),
    level: LEVELS[severity],
    message: { text: text(messageOf(finding)) },
    locations: [
      {
        physicalLocation: physical(file.name, range),
        ...(shot !== undefined && {
          logicalLocations: [
            { name: inertLine(shot), fullyQualifiedName: inertLine(`shots/${shot}`) },
          ],
        }),
      },
    ],
    ...(related.length > 0 && {
      relatedLocations: related.map((place, id) => ({
        id,
        physicalLocation: physical(nameIn(place.file), place.range),
        message: { text: text(place.words) },
      })),
    }),
    ...(fixes.length > 0 && { fixes: fixes.map((fix) => fixOf(fix, nameIn)) }),
  };
}

function fixOf({ title, sideEffects, edits }: LocatedFix, nameIn: (file: string) => string) {
  const names = [...new Set(edits.map(({ file }) => file))];
  return {
    description: { text: text(sideEffects === undefined ? title : `${title} (${sideEffects})`) },
    artifactChanges: names.map((name) => ({
      artifactLocation: { uri: uriOf(nameIn(name)) },
      replacements: edits
        .filter(({ file }) => file === name)
        .map((edit) => ({
          deletedRegion: region(edit.range),
          ...(edit.text !== '' && { insertedContent: { text: edit.text } }),
        })),
    })),
  };
}

const physical = (name: string, range: Range) => ({
  artifactLocation: { uri: uriOf(name) },
  region: region(range),
});

/** Lines and columns from 1; a region ends before its end column. */
const region = ({ start, end }: Range) => ({
  startLine: start.line + 1,
  startColumn: start.character + 1,
  endLine: end.line + 1,
  endColumn: end.character + 1,
});

/** A relative reference, or the URI of a file where the name is absolute (RFC 3986, RFC 8089). */
function uriOf(name: string): string {
  const path = name.split('/').map(encodeURIComponent).join('/');
  if (/^[A-Za-z]:\//.test(name)) return `file:///${name[0]}:${path.slice(path.indexOf('/'))}`;
  return name.startsWith('/') ? `file://${path}` : path;
}

/** Brackets would make links of a message's text (SARIF 2.1.0, 3.11.6). */
const text = (message: string): string => inertLine(message).replace(/[\\[\]]/g, '\\$&');
