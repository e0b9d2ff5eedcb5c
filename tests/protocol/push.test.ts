import { describe, expect, it } from 'vitest';
import { DiagnosticSeverity, DiagnosticTag } from 'vscode-languageserver';
import { at, connect, KIT, PLAN, quiet, until } from './support/client.ts';

describe('a client that does not ask for findings', () => {
  it('is sent them, with the version, and never offered to ask', async () => {
    const client = await connect();
    expect(client.result.capabilities.diagnosticProvider).toBeUndefined();
    client.open(PLAN, 'a: !error broken\n', 7);
    await until(() => client.published.length > 0);
    expect(client.last(PLAN)).toEqual({
      uri: PLAN,
      version: 7,
      diagnostics: [
        {
          range: at(0, 3, 16),
          severity: DiagnosticSeverity.Error,
          code: 'told-to',
          source: 'lamella',
          message: 'broken',
        },
      ],
    });
  });

  it('is told of a clean text once a version, so that it can tell old from new', async () => {
    const client = await connect();
    client.open(PLAN, 'a: 1\n', 1);
    await until(() => client.last(PLAN)?.version === 1);
    client.change(PLAN, 2, [{ range: at(0, 3, 4), text: '2' }]);
    await until(() => client.last(PLAN)?.version === 2);
    expect(client.published).toHaveLength(2);
  });

  it('is sent the findings of the last of a burst of edits, not of each', async () => {
    const client = await connect();
    client.open(PLAN, 'a: \n');
    for (let version = 2; version <= 41; version++)
      client.change(PLAN, version, [{ range: at(0, 3), text: 'x' }]);
    client.change(PLAN, 42, [{ text: 'a: !warning the last\n' }]);
    await until(() => client.last(PLAN)?.version === 42);
    await quiet(client);
    expect(client.last(PLAN)?.diagnostics.map(({ message }) => message)).toEqual(['the last']);
    expect(client.published.length).toBeLessThan(42);
    const versions = client.published.map(({ version }) => version ?? 0);
    expect(versions).toEqual([...versions].sort((a, b) => a - b));
  });

  it('has findings of a closed text taken back', async () => {
    const client = await connect();
    client.open(PLAN, 'a: !error broken\n');
    await until(() => client.last(PLAN)?.diagnostics.length === 1);
    client.close(PLAN);
    await until(() => client.last(PLAN)?.diagnostics.length === 0);
    expect(client.last(PLAN)).toEqual({ uri: PLAN, diagnostics: [] });
  });

  it('is sent the findings of a used file that it has not open, until no plan uses it', async () => {
    const client = await connect({ disk: new Map([[KIT, 'a: !error in the kit\n']]) });
    client.open(PLAN, 'use: kit.shootplan.yaml\n');
    await until(() => client.last(KIT)?.diagnostics.length === 1);
    expect(client.last(KIT)?.version).toBeUndefined();
    client.change(PLAN, 2, [{ range: at(0, 0, 3), text: 'not' }]);
    await until(() => client.last(KIT)?.diagnostics.length === 0);
  });
});

describe('what findings become', () => {
  it('says what is unused and what is related only to clients that show it', async () => {
    const text = 'a: !hint unused, related\n';
    const bare = await connect();
    bare.open(PLAN, text);
    await until(() => bare.published.length > 0);
    const [plain] = bare.last(PLAN)?.diagnostics ?? [];
    expect(plain).not.toHaveProperty('tags');
    expect(plain).not.toHaveProperty('relatedInformation');

    const publishDiagnostics = {
      relatedInformation: true,
      tagSupport: { valueSet: [DiagnosticTag.Unnecessary] },
    };
    const rich = await connect({ capabilities: { textDocument: { publishDiagnostics } } });
    rich.open(PLAN, text);
    await until(() => rich.published.length > 0);
    expect(rich.last(PLAN)?.diagnostics[0]).toMatchObject({
      tags: [DiagnosticTag.Unnecessary],
      relatedInformation: [
        { location: { uri: PLAN, range: at(0, 0, 1) }, message: 'the first line' },
      ],
    });
  });

  it('sends at most 500 of a file, errors first, and says how many more there are', async () => {
    const client = await connect();
    const lines = Array.from(
      { length: 700 },
      (_, i) => `a: !${i % 7 === 0 ? 'error' : 'hint'} ${i}`,
    );
    client.open(PLAN, lines.join('\n'));
    await until(() => client.published.length > 0);
    const diagnostics = client.last(PLAN)?.diagnostics ?? [];
    expect(diagnostics).toHaveLength(501);
    const severities = diagnostics.slice(0, 500).map(({ severity }) => severity);
    expect(severities.filter((each) => each === DiagnosticSeverity.Error)).toHaveLength(100);
    expect(severities.slice(0, 100)).not.toContain(DiagnosticSeverity.Hint);
    expect(diagnostics.at(-1)?.message).toContain('200 more findings');
    expect(diagnostics.at(-1)?.message).toContain('lamella check');
  });

  it('names a file by the address that the client opened it under', async () => {
    const client = await connect();
    const odd = 'file:///plans/a%20(1).shootplan.yaml';
    client.open(odd, 'a: !error broken\n');
    await until(() => client.published.length > 0);
    expect(client.published[0]?.uri).toBe(odd);
    client.change('file:///plans/a%20%281%29.shootplan.yaml', 2, [{ text: 'a: 1\n' }]);
    await until(() => client.last(odd)?.version === 2);
  });

  it('says of a text over 4 MB that it was not read', async () => {
    const client = await connect();
    client.open(PLAN, '#'.repeat(4 * 1024 * 1024 + 1));
    await until(() => client.published.length > 0);
    expect(client.last(PLAN)?.diagnostics[0]?.message).toContain('was not read');
    client.change(PLAN, 2, [{ text: 'a: 1\n' }]);
    await until(() => client.last(PLAN)?.diagnostics.length === 0);
  });
});
