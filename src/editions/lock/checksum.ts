/**
 * CRC-32 as in PNG and gzip (ISO 3309), to tell a damaged locked page from a wrong passphrase before either is tried.
 * No secret rests on it. Check value: `123456789` gives cbf43926.
 */
export function checksum(bytes: Uint8Array): string {
  const table = Uint32Array.from({ length: 256 }, (_, byte) => {
    let crc = byte
    for (let bit = 0; bit < 8; bit++) crc = crc & 1 ? (crc >>> 1) ^ 0xedb88320 : crc >>> 1
    return crc
  })
  let crc = 0xffffffff
  for (let i = 0; i < bytes.length; i++) crc = (crc >>> 8) ^ (table[(crc ^ (bytes[i] ?? 0)) & 0xff] ?? 0)
  return ((crc ^ 0xffffffff) >>> 0).toString(16).padStart(8, '0')
}
