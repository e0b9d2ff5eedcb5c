/** Types are stripped by the bundler that also builds the project; names of a JSON file are exports. */
import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { transform } from 'esbuild';

const NAME = /^[a-z]\w*$/i;

const ofJson = (text) => {
  const names = Object.keys(JSON.parse(text)).filter((name) => NAME.test(name));
  return `const all = ${text};
export default all;
${names.map((name) => `const ${name}_ = all.${name};\nexport { ${name}_ as ${name} };`).join('\n')}
`;
};

const ofTypeScript = async (text, sourcefile) => {
  const { code } = await transform(text, {
    loader: 'ts',
    format: 'esm',
    target: 'node20',
    sourcemap: 'inline',
    sourcefile,
  });
  return code;
};

export async function load(url, context, next) {
  const [address] = url.split('?');
  const isOurs = address.startsWith('file:') && !address.includes('/node_modules/');
  if (!isOurs || !/\.(?:ts|json)$/.test(address)) return next(url, context);
  const file = fileURLToPath(address);
  const text = await readFile(file, 'utf8');
  const source = file.endsWith('.json') ? ofJson(text) : await ofTypeScript(text, file);
  return { format: 'module', source, shortCircuit: true };
}
