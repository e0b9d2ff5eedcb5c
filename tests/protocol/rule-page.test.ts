/** The code of a finding leads to the page of its rule. */
import { describe, expect, it } from 'vitest';
import type { ClientCapabilities, Diagnostic } from 'vscode-languageserver';
import { createCore } from '../../shared/core/core.ts';
import { connect, PLAN } from './support/client.ts';

const LEADS: ClientCapabilities = {
  textDocument: { diagnostic: { codeDescriptionSupport: true } },
};

async function finding(options: Parameters<typeof connect>[0]): Promise<Diagnostic> {
  const client = await connect({ createCore, ...options });
  client.open(PLAN, 'shotz: 1\n');
  const found = await client.pull(PLAN);
  return found.find(({ code }) => code === 'unknown-key')!;
}

describe('the code of a finding', () => {
  it('leads to the address that the client gave, with the rule in it', async () => {
    const { codeDescription } = await finding({
      capabilities: LEADS,
      initializationOptions: { rulePage: 'command:x?%5B%22{rule}%22%5D' },
    });
    expect(codeDescription).toEqual({ href: 'command:x?%5B%22unknown-key%22%5D' });
  });

  it('leads nowhere where there is no page, or nobody to follow it', async () => {
    expect(await finding({ capabilities: LEADS })).not.toHaveProperty('codeDescription');
    const without = await finding({
      capabilities: { textDocument: { diagnostic: {} } },
      initializationOptions: { rulePage: 'file:///RULES.md#{rule}' },
    });
    expect(without).not.toHaveProperty('codeDescription');
  });
});

it('gives a rule as a page, and of others none', async () => {
  const { connection } = await connect({ createCore });
  const page = await connection.sendRequest('lamella/rule', { rule: 'depth-short' });
  expect(page).toMatch(
    /^# depth-short\n\n\*\*warning\*\*\n\nReported when .+\n\n## Examples that fail\n/s,
  );
  expect(page).toContain('~~~~yaml\nshots/');
  for (const rule of ['constructor', '', 3, null])
    expect(await connection.sendRequest('lamella/rule', { rule })).toBe(null);
});
