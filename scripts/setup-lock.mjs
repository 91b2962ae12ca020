import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';

const PAUSE_MS = 200;

/** Runs `work` while no other set-up of this folder runs; waits for one that does, and takes over from one that died. */
export async function withSetupLock(folder, say, work) {
  mkdirSync(folder, { recursive: true });
  const lock = path.join(folder, 'setup.lock');
  await takeLock(lock, say);
  try {
    await work();
  } finally {
    rmSync(lock, { force: true });
  }
}

async function takeLock(lock, say) {
  let said = false;
  while (!createLock(lock)) {
    const owner = ownerOf(lock);
    if (owner !== undefined && !isAlive(owner)) rmSync(lock, { force: true });
    else {
      if (!said) say(`Another set-up is running (process ${owner ?? 'unknown'}); waiting for it …`);
      said = true;
      await sleep(PAUSE_MS);
    }
  }
}

function createLock(lock) {
  try {
    writeFileSync(lock, String(process.pid), { flag: 'wx' });
    return true;
  } catch (error) {
    if (error.code === 'EEXIST') return false;
    throw error;
  }
}

// Undefined in the moment between the file's making and its first byte, and when it has just gone.
function ownerOf(lock) {
  try {
    return Number(readFileSync(lock, 'utf8')) || undefined;
  } catch {
    return undefined;
  }
}

function isAlive(pid) {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error.code === 'EPERM';
  }
}
