import { spawnSync } from 'node:child_process';
import { accessSync, constants } from 'node:fs';
import { delimiter, join } from 'node:path';
import type { Engine } from './engines.ts';

/** True when the command can be run from the path. */
export function isThere(command: string): boolean {
  return (process.env.PATH ?? '').split(delimiter).some((folder) => {
    try {
      accessSync(join(folder, command), constants.X_OK);
      return true;
    } catch {
      // Not in this folder: look in the next.
      return false;
    }
  });
}

/** Packages of Debian that would bring the engines that are missing here. */
export function missingPackages(engines: readonly Engine[]): string[] {
  return engines.flatMap(({ needs }) => (needs !== null && !isThere(needs.command) ? [needs.debian] : []));
}

/** Installs packages where apt-get is there and we are root; false when it cannot. */
export function installPackages(packages: readonly string[]): boolean {
  if (packages.length === 0) return true;
  if (process.getuid?.() !== 0 || !isThere('apt-get')) return false;
  const apt = (...args: string[]) =>
    spawnSync('apt-get', ['-qq', ...args], {
      stdio: ['ignore', 'ignore', 'inherit'],
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
    }).status === 0;
  return apt('update') && apt('install', '-y', '--no-install-recommends', ...packages);
}
