import { homedir } from 'node:os';
import { join } from 'node:path';

/** The database file in the user's data folder (XDG Base Directory Specification on Linux), or in TRUEPOT_HOME where that is set. */
export function dataFile(): string {
  const own = process.env['TRUEPOT_HOME'];
  if (own) return join(own, 'truepot.db');
  const home = homedir();
  if (process.platform === 'darwin') return join(home, 'Library', 'Application Support', 'Truepot', 'truepot.db');
  if (process.platform === 'win32') return join(process.env['APPDATA'] ?? join(home, 'AppData', 'Roaming'), 'Truepot', 'truepot.db');
  return join(process.env['XDG_DATA_HOME'] ?? join(home, '.local', 'share'), 'truepot', 'truepot.db');
}
