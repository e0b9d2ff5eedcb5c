/** What the extension promises in its manifest: package.json is read by the editor as it stands. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

const at = (path: string): URL => new URL(`../../${path}`, import.meta.url);
const written = readFileSync(at('package.json'), 'utf8');
const words: Readonly<Record<string, string>> = JSON.parse(
  readFileSync(at('package.nls.json'), 'utf8'),
);
/** As an editor shows it: "%command.newPlan%" is what package.nls.json has under it. */
const manifest = JSON.parse(written, (_, value) => {
  const [, key] = /^%(.+)%$/.exec(typeof value === 'string' ? value : '') ?? [];
  return key === undefined ? value : words[key];
});
const { contributes } = manifest;
const LANGUAGE = 'shootplan';

interface Command {
  readonly command: string;
  readonly category?: string;
  readonly title: string;
}

interface Setting {
  readonly description?: string;
  readonly markdownDescription?: string;
  readonly default?: unknown;
  readonly enum?: readonly unknown[];
  readonly enumDescriptions?: readonly string[];
}

const commands: readonly Command[] = contributes.commands;
const settings = Object.entries<Setting>(contributes.configuration.properties);

const clientSource = readdirSync(at('client'))
  .filter((name) => name.endsWith('.ts'))
  .map((name) => readFileSync(at(`client/${name}`), 'utf8'))
  .join('\n');

test('it wakes for its own language, commands and tasks only', () => {
  const own = [
    `onLanguage:${LANGUAGE}`,
    // What was open when a window was closed.
    'onWebviewPanel:lamella.sheet',
    ...contributes.taskDefinitions.map(({ type }: { type: string }) => `onTaskType:${type}`),
    ...commands.map(({ command }) => `onCommand:${command}`),
  ];
  expect(manifest.activationEvents.length).toBeGreaterThan(0);
  for (const event of manifest.activationEvents) expect(own).toContain(event);
});

test('its language takes no other files than plans', () => {
  expect(contributes.languages).toHaveLength(1);
  const [{ id, extensions, filenames, filenamePatterns, firstLine }] = contributes.languages;
  expect(id).toBe(LANGUAGE);
  expect(extensions).toEqual(['.shootplan.yaml']);
  expect([filenames, filenamePatterns, firstLine]).toEqual([undefined, undefined, undefined]);
});

test('every command is of the Lamella category, and the client answers it', () => {
  expect(commands.length).toBeGreaterThan(0);
  for (const { command, category, title } of commands) {
    expect(command).toMatch(/^lamella\.[a-zA-Z]+$/);
    expect(category).toBe('Lamella');
    expect(title).toMatch(/^[A-Z]/);
    expect(clientSource).toContain(`registerCommand('${command}'`);
  }
  for (const [, name] of clientSource.matchAll(/registerCommand\('([^']+)'/g)) {
    expect(commands.map(({ command }) => command)).toContain(name);
  }
});

test.each(settings)('the setting %s says what it does and has a default', (name, setting) => {
  expect(name).toMatch(/^lamella\./);
  const words = setting.markdownDescription ?? setting.description ?? '';
  expect(words).toMatch(/\.$/);
  expect(setting).toHaveProperty('default');
  if (setting.enum) {
    expect(setting.enum).toContain(setting.default);
    expect(setting.enumDescriptions).toHaveLength(setting.enum.length);
  }
});

test('no setting changes what is found: severities belong to the plan', () => {
  expect(
    settings.map(([name]) => name).filter((name) => /severity|rule|allow/i.test(name)),
  ).toEqual([]);
});

test('all its words stand in package.nls.json, and nothing else does', () => {
  const used = [...written.matchAll(/"%(.+)%"/g)].map(([, key]) => key);
  expect(used.sort()).toEqual(Object.keys(words).sort());
  for (const { title } of JSON.parse(written).contributes.commands) expect(title).toMatch(/^%.+%$/);
});

test('untrusted and virtual workspaces are declared', () => {
  expect(manifest.capabilities.untrustedWorkspaces.supported).toBe(true);
  expect(manifest.capabilities.virtualWorkspaces).toBe(true);
});

test('every file that the manifest names is there', () => {
  const [language] = contributes.languages;
  const files = [
    manifest.icon,
    language.configuration,
    language.icon.light,
    language.icon.dark,
    ...contributes.grammars.map(({ path }: { path: string }) => path),
  ];
  for (const file of files) expect(existsSync(at(file)), file).toBe(true);
});

test('the grammar stands on YAML’s own', () => {
  const grammar = JSON.parse(readFileSync(at(contributes.grammars[0].path), 'utf8'));
  expect(grammar.scopeName).toBe(contributes.grammars[0].scopeName);
  expect(grammar.patterns).toContainEqual({ include: 'source.yaml' });
});

test('swatches are drawn by the language server alone', () => {
  const defaults = contributes.configurationDefaults[`[${LANGUAGE}]`];
  expect(defaults['editor.defaultColorDecorators']).toBe('never');
  expect(defaults['editor.insertSpaces']).toBe(true);
});

test('everything is bundled: nothing has to be installed beside the package', () => {
  expect(manifest.dependencies).toBeUndefined();
});
