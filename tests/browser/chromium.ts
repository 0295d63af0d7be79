import { spawnSync } from 'node:child_process';
import { accessSync, constants } from 'node:fs';
import { delimiter, join } from 'node:path';

/** How tests start the browser. */
export const FLAGS = [
  '--no-sandbox',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  // WebGL without a graphics card.
  '--use-angle=swiftshader',
  '--enable-unsafe-swiftshader',
  '--ignore-gpu-blocklist',
];

const COMMANDS = [
  'google-chrome-stable',
  'google-chrome',
  'chromium',
  'chromium-browser',
  'microsoft-edge-stable',
  'microsoft-edge',
];

const MAC_APPS = ['Google Chrome', 'Chromium', 'Microsoft Edge'];

const WINDOWS_PROGRAMS = [
  ['Google', 'Chrome', 'Application', 'chrome.exe'],
  ['Chromium', 'Application', 'chrome.exe'],
  ['Microsoft', 'Edge', 'Application', 'msedge.exe'],
];

/** Where Chrome, Chromium or Edge may be on this kind of system, likeliest first. */
export function browserPlaces(platform: string, env: NodeJS.ProcessEnv): string[] {
  if (platform === 'win32') {
    const roots = [env.PROGRAMFILES, env['PROGRAMFILES(X86)'], env.LOCALAPPDATA];
    return WINDOWS_PROGRAMS.flatMap((parts) =>
      roots.filter((root) => root !== undefined).map((root) => join(root, ...parts)),
    );
  }
  const folders = [...(env.PATH ?? '').split(delimiter).filter((folder) => folder !== ''), '/usr/bin'];
  const commands = COMMANDS.flatMap((command) => folders.map((folder) => join(folder, command)));
  if (platform !== 'darwin') return [...commands, '/snap/bin/chromium', '/opt/google/chrome/chrome'];
  const apps = ['/Applications', join(env.HOME ?? '', 'Applications')];
  return [
    ...MAC_APPS.flatMap((app) => apps.map((folder) => `${folder}/${app}.app/Contents/MacOS/${app}`)),
    ...commands,
  ];
}

/** Path of a browser that can be run, or undefined; throws when FREESTROKE_CHROME names a file that cannot. */
export function findChromium(): string | undefined {
  const named = process.env.FREESTROKE_CHROME;
  if (named !== undefined && named !== '') {
    if (canRun(named)) return named;
    throw new Error(`FREESTROKE_CHROME is set to ${named}, which is not a program that can be run.`);
  }
  return browserPlaces(process.platform, process.env).find(canRun);
}

/** Finds a browser, else installs Debian's where apt allows; throws one plain sentence when neither works. */
export function ensureChromium(): string {
  const found = findChromium() ?? (installWithApt() ? findChromium() : undefined);
  if (found !== undefined) return found;
  throw new Error(
    'The browser tests need Chrome, Chromium or Edge: install one, or set FREESTROKE_CHROME to its path ' +
      '(`npm run test:unit` runs all other tests without it).',
  );
}

function canRun(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    // Not there or not ours to run: either way, look further.
    return false;
  }
}

function succeeds(command: string, args: string[], show: 'inherit' | 'ignore'): boolean {
  return spawnSync(command, args, { stdio: ['ignore', show, show] }).status === 0;
}

function installWithApt(): boolean {
  if (process.platform !== 'linux' || !succeeds('apt-get', ['--version'], 'ignore')) return false;
  const isRoot = process.getuid?.() === 0;
  if (!isRoot && !succeeds('sudo', ['-n', 'true'], 'ignore')) return false;
  console.log('No browser found: installing Chromium with apt-get.');
  // -qq leaves only what goes wrong; `env` carries the setting through sudo.
  const apt = ['env', 'DEBIAN_FRONTEND=noninteractive', 'apt-get', '-qq'];
  const [command = 'env', ...rest] = isRoot ? apt : ['sudo', '-n', ...apt];
  return (
    succeeds(command, [...rest, 'update'], 'inherit') &&
    succeeds(command, [...rest, 'install', '-y', '--no-install-recommends', 'chromium'], 'inherit')
  );
}
