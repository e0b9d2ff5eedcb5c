/** What services and workflows read: SARIF by its published schema, workflow commands by their rules. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import Ajv from 'ajv-draft-04';
import { describe, expect, it } from 'vitest';
import { githubReport } from '../../shared/report/github.ts';
import { sarifReport } from '../../shared/report/sarif.ts';
import type { ReportedFile } from '../../shared/report/text.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { ALL_RULES } from '../../shared/rules/registry.ts';
import { each } from '../support/each.ts';
import { applied, changed, coreWith, PLAN } from '../support/plans.ts';
import { sampleCore, samples } from './support/sheets.ts';

/**
 * The schema of the Static Analysis Results Interchange Format 2.1.0 as OASIS published it, as the
 * package @microsoft/jest-sarif ships it.
 */
const schema = JSON.parse(
  readFileSync(
    createRequire(import.meta.url).resolve(
      '@microsoft/jest-sarif/lib/schemas/sarif-2.1.0-rtm.5.json',
    ),
    'utf8',
  ),
);
const isSarif = new Ajv({ strict: false, validateFormats: false, unicodeRegExp: false }).compile(
  schema,
);

const reported = (text: string, name = 'plan.shootplan.yaml'): ReportedFile => {
  const core = sampleCore(text);
  return {
    name,
    findings: core.findings(PLAN).map((finding) => ({ finding, fixes: core.fixesOf(finding) })),
    nameOf: (file) => file.slice(file.lastIndexOf('/') + 1),
  };
};

const BROKEN = changed(EXAMPLE_PLAN, {
  'shots/frost/aperture': 'f/2',
  'shots/frost/shutter': '1/20 s',
  'shots/frost/rig': 'bensh',
  'shots/skin/tilt': '1 deg',
});

describe('SARIF', () => {
  it('the schema tells what is no log', () => {
    expect(isSarif({ version: '2.1.0' })).toBe(false);
    expect(isSarif({ version: '2.1.0', runs: [{ tool: {} }] })).toBe(false);
  });

  it('of every sample is valid by the published schema', () => {
    each(
      [...samples, ['the broken example', BROKEN] as const, ['nothing', ''] as const],
      ([_, text]) => {
        const log = JSON.parse(sarifReport([reported(text)], ALL_RULES, '1.2.3'));
        expect(isSarif(log), JSON.stringify(isSarif.errors)).toBe(true);
        for (const { ruleId, ruleIndex } of log.runs[0].results)
          expect(log.runs[0].tool.driver.rules[ruleIndex].id).toBe(ruleId);
      },
    );
  });

  it('says every finding but hints, on its lines and columns', () => {
    const file = reported(BROKEN);
    const log = JSON.parse(sarifReport([file], ALL_RULES, '1.2.3'));
    const said = file.findings.filter(({ finding }) => finding.severity !== 'hint');
    expect(said.length).toBeGreaterThan(1);
    expect(log.runs[0].results).toHaveLength(said.length);
    const lines = BROKEN.split('\n');
    const unknown = log.runs[0].results.find(
      ({ ruleId }: { ruleId: string }) => ruleId === 'unknown-name',
    );
    const { startLine, startColumn, endLine, endColumn } =
      unknown.locations[0].physicalLocation.region;
    expect(endLine).toBe(startLine);
    expect(lines[startLine - 1]!.slice(startColumn - 1, endColumn - 1)).toBe('bensh');
    expect(unknown.level).toBe('error');
  });

  it('its fixes, applied as it says, are the fixes', () => {
    const log = JSON.parse(sarifReport([reported(BROKEN)], ALL_RULES, '1.2.3'));
    const unknown = log.runs[0].results.find(
      ({ ruleId }: { ruleId: string }) => ruleId === 'unknown-name',
    );
    const [{ replacements }] = unknown.fixes[0].artifactChanges;
    const fixed = applied(
      BROKEN,
      replacements.map(
        ({
          deletedRegion: at,
          insertedContent,
        }: {
          deletedRegion: Record<string, number>;
          insertedContent?: { text: string };
        }) => ({
          range: {
            start: { line: at.startLine! - 1, character: at.startColumn! - 1 },
            end: { line: at.endLine! - 1, character: at.endColumn! - 1 },
          },
          text: insertedContent?.text ?? '',
        }),
      ),
    );
    expect(fixed).toContain('rig: bench\n');
    expect(
      coreWith(fixed)
        .findings(PLAN)
        .map(({ rule }) => rule),
    ).not.toContain('unknown-name');
  });

  it.each([
    ['a folder/plan %.shootplan.yaml', 'a%20folder/plan%20%25.shootplan.yaml'],
    ['/tmp/ü.shootplan.yaml', 'file:///tmp/%C3%BC.shootplan.yaml'],
    ['C:/plans/a.shootplan.yaml', 'file:///C:/plans/a.shootplan.yaml'],
  ])('names %s as a URI', (name, uri) => {
    const log = JSON.parse(sarifReport([reported(BROKEN, name)], ALL_RULES, '1'));
    expect(log.runs[0].artifacts[0].location.uri).toBe(uri);
    expect(log.runs[0].results[0].locations[0].physicalLocation.artifactLocation.uri).toBe(uri);
  });
});

/** A workflow command as GitHub's documentation gives it: `::name key=value,…::message`. */
const COMMAND =
  /^::(error|warning|notice) ((?:[a-zA-Z]+=[^:,\r\n]*)(?:,[a-zA-Z]+=[^:,\r\n]*)*)::(.+)$/;

describe('workflow commands', () => {
  it('one a line for every finding but hints', () => {
    const file = reported(BROKEN);
    const lines = githubReport([file]).trimEnd().split('\n');
    const said = file.findings.filter(({ finding }) => finding.severity !== 'hint');
    expect(lines).toHaveLength(said.length);
    for (const line of lines) expect(line).toMatch(COMMAND);
    const row = BROKEN.split('\n').findIndex((text) => text.includes('bensh'));
    expect(lines.join('\n')).toContain(
      `::error file=plan.shootplan.yaml,line=${row + 1},endLine=${row + 1},col=10,endColumn=15,title=unknown-name::`,
    );
  });

  it('say nothing where nothing is found', () => {
    expect(githubReport([reported(EXAMPLE_PLAN)])).toBe('');
  });

  it('can be ended by nothing that a plan or a file’s name says', () => {
    const hostile = changed(EXAMPLE_PLAN, {
      'shots/frost/rig': '"a\\n::error::mine, 100%: \\r\\n::stop-commands::x"',
    });
    const out = githubReport([reported(hostile, 'a,b:c%0A::warning::x.shootplan.yaml')]);
    for (const line of out.trimEnd().split('\n')) expect(line).toMatch(COMMAND);
    expect(out).toContain('file=a%2Cb%3Ac%250A%3A%3Awarning%3A%3Ax.shootplan.yaml,');
  });
});
