/** Who can open an address of this page: whoever is sent it, only this computer, or only who has this very file. */
export type Reach = 'all' | 'computer' | 'file';

/** Names of the computer itself. **Source:** RFC 6761 §6.3 (localhost and names under it), RFC 1122 §3.2.1.3 (127/8), RFC 4291 §2.5.3 (::1). */
const OWN = /^(localhost|.*\.localhost|127(\.\d+){3}|\[::1\]|0\.0\.0\.0)$/;

export function reachOf({ protocol, hostname }: Pick<Location, 'protocol' | 'hostname'>): Reach {
  if (protocol === 'file:') return 'file';
  return OWN.test(hostname) ? 'computer' : 'all';
}
