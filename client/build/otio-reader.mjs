/**
 * Builds `tests/readers/otio.cpp`, which reads timelines with OpenTimelineIO's own C++ library. The
 * library is taken from the system where it is installed, else from Debian's release `forky`, the
 * first that packs it. Its packages are only unpacked into `.cache/`, with the C library that they
 * need beside them, so the system stays as it is.
 */
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { ROOT } from './ensure.mjs';

const SOURCE = path.join(ROOT, 'tests/readers/otio.cpp');
const CACHE = path.join(ROOT, '.cache/otio');
const READER = path.join(CACHE, 'reader');
const RELEASE = 'forky';
const PACKAGES = ['libopentimelineio-dev', 'libimath-dev'];

const output = (command, args) => execFileSync(command, args, { encoding: 'utf8' });

/** @returns what the compiler has against it; empty: nothing */
const compile = (...flags) => {
  const args = ['-std=c++17', SOURCE, '-o', READER, ...flags, '-lopentimelineio', '-lopentime'];
  const { error, status, stderr } = spawnSync('g++', args, { encoding: 'utf8' });
  if (error) throw new Error(`g++ can't be started: ${error.message}`);
  return status === 0 ? '' : stderr || `g++ ended with ${status}`;
};

/** Where this system gets its own release from. */
const mirror = () => {
  const [, codename] =
    /^VERSION_CODENAME="?(\w+)/m.exec(readFileSync('/etc/os-release', 'utf8')) ?? [];
  const targets = output('apt-get', [
    'indextargets',
    '--format',
    '$(RELEASE) $(REPO_URI)',
    'Created-By: Packages',
  ]);
  const own = targets.split('\n').find((line) => line.startsWith(`${codename} `));
  if (!own) throw new Error(`apt-get names no source of ${codename}`);
  return own.slice(codename.length + 1);
};

/** @returns the folder that they are unpacked in */
const unpacked = () => {
  const inCache = (...parts) => path.join(CACHE, ...parts);
  for (const folder of ['lists/partial', 'archives/partial', 'root'])
    mkdirSync(inCache(folder), { recursive: true });
  const keys = '/usr/share/keyrings/debian-archive-keyring.gpg';
  writeFileSync(inCache('sources.list'), `deb [signed-by=${keys}] ${mirror()} ${RELEASE} main\n`);
  // Nothing counts as installed, so that all that they need comes with them.
  writeFileSync(inCache('status'), '');
  const options = {
    'Dir::Etc::SourceList': inCache('sources.list'),
    'Dir::Etc::SourceParts': '/dev/null',
    'Dir::State::Lists': inCache('lists'),
    'Dir::State::Status': inCache('status'),
    'Dir::Cache': CACHE,
    'Dir::Cache::Archives': inCache('archives'),
    'APT::Sandbox::User': '',
    'APT::Install-Recommends': 'false',
    'Acquire::Languages': 'none',
  };
  const apt = (...args) =>
    output('apt-get', [
      '-qq',
      ...Object.entries(options).flatMap(([key, value]) => ['-o', `${key}=${value}`]),
      ...args,
    ]);
  apt('update');
  apt('install', '--yes', '--download-only', ...PACKAGES);
  for (const file of readdirSync(inCache('archives')))
    if (file.endsWith('.deb')) output('dpkg', ['-x', inCache('archives', file), inCache('root')]);
  return inCache('root');
};

/** @returns the command that starts it, and its arguments */
const built = () => {
  rmSync(CACHE, { recursive: true, force: true });
  mkdirSync(CACHE, { recursive: true });
  if (compile() === '') return [READER];
  const root = unpacked();
  const system = readdirSync(path.join(root, 'usr/lib')).find((name) =>
    name.endsWith('-linux-gnu'),
  );
  const libraries = path.join(root, 'usr/lib', system);
  const against = compile(
    `-I${path.join(root, 'usr/include')}`,
    `-L${libraries}`,
    // What the library itself needs is of its own release.
    '-Wl,--allow-shlib-undefined',
  );
  if (against) throw new Error(against);
  const loader = readdirSync(libraries).find((name) => name.startsWith('ld-linux'));
  return [path.join(libraries, loader), '--library-path', libraries, READER];
};

/** Before the tests that run it. */
export default ({ provide }) => {
  try {
    provide('otioReader', built());
  } catch (cause) {
    throw new Error(
      `Nothing was read with OpenTimelineIO's own library: ${cause.message}. Install it with its headers, or use Debian with apt-get and g++.`,
    );
  }
};
