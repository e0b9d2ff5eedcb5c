/** Findings as the protocol's diagnostics, at most as many as an editor can show with sense. */
import { type Diagnostic, DiagnosticSeverity, DiagnosticTag } from 'vscode-languageserver';
import { type LocatedFinding, messageOf } from '../../shared/api/located.ts';
import type { FileId } from '../../shared/plan/place.ts';
import { inertLine } from '../../shared/report/inert.ts';
import { SEVERITIES, type Severity } from '../../shared/rules/rule.ts';
import { message } from '../../shared/words/message.ts';
import type { ClientFeatures } from '../client-features.ts';

export const SOURCE = 'lamella';

/** Most findings of one file that are sent, errors first; `lamella check` shows all. */
export const MOST_FINDINGS = 500;

const TO_SEVERITY: Readonly<Record<Severity, DiagnosticSeverity>> = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  note: DiagnosticSeverity.Information,
  hint: DiagnosticSeverity.Hint,
};

export class DiagnosticMaker {
  readonly #client: ClientFeatures;
  readonly #uriOf: (file: FileId) => string;
  /** What a finding was made into stays the same object for as long as it says the same. */
  readonly #made = new WeakMap<LocatedFinding, Diagnostic>();

  constructor(client: ClientFeatures, uriOf: (file: FileId) => string) {
    this.#client = client;
    this.#uriOf = uriOf;
  }

  make(findings: readonly LocatedFinding[]): Diagnostic[] {
    const sent = mostSevere(findings).map((finding) => this.#diagnosticOf(finding));
    const left = findings.length - sent.length;
    return left === 0 ? sent : [...sent, more(left)];
  }

  #diagnosticOf(finding: LocatedFinding): Diagnostic {
    const before = this.#made.get(finding);
    if (before && this.#namesFilesRightly(before, finding)) return before;
    const diagnostic = toDiagnostic(finding, this.#client, this.#uriOf);
    this.#made.set(finding, diagnostic);
    return diagnostic;
  }

  /** Another client's way of writing a URI may have come in since. */
  #namesFilesRightly({ relatedInformation = [] }: Diagnostic, { related }: LocatedFinding) {
    return relatedInformation.every(
      ({ location }, index) => location.uri === this.#uriOf(related[index]!.file),
    );
  }
}

/** Errors first, each severity in the order of the text. */
function mostSevere(findings: readonly LocatedFinding[]): readonly LocatedFinding[] {
  if (findings.length <= MOST_FINDINGS) return findings;
  return SEVERITIES.flatMap((severity) =>
    findings.filter((finding) => finding.severity === severity),
  ).slice(0, MOST_FINDINGS);
}

function toDiagnostic(
  finding: LocatedFinding,
  client: ClientFeatures,
  uriOf: (file: FileId) => string,
): Diagnostic {
  const related = client.relatedInformation ? finding.related : [];
  const unused = client.tagsUnused && /(^|-)unused$|^unused-/.test(finding.rule);
  return {
    range: finding.range,
    severity: TO_SEVERITY[finding.severity],
    code: finding.rule,
    ...(client.rulePage !== null && {
      codeDescription: { href: client.rulePage.replaceAll('{rule}', finding.rule) },
    }),
    source: SOURCE,
    message: inertLine(messageOf(finding)),
    ...(unused && { tags: [DiagnosticTag.Unnecessary] }),
    ...(related.length > 0 && {
      relatedInformation: related.map(({ file, range, words }) => ({
        location: { uri: uriOf(file), range },
        message: inertLine(words),
      })),
    }),
  };
}

const more = (left: number): Diagnostic => ({
  range: { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } },
  severity: DiagnosticSeverity.Information,
  code: 'too-much',
  source: SOURCE,
  message:
    left === 1
      ? message`${left} more finding in this file is not shown. \`lamella check\` on the command line shows all.`
      : message`${left} more findings in this file are not shown. \`lamella check\` on the command line shows all.`,
});
