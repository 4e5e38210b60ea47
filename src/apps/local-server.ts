/** A server that this machine alone can reach. */
import type { Server } from 'node:http'
import type { AddressInfo } from 'node:net'

/**
 * Listens on the loopback address alone.
 * @param port 0 takes any that is free
 * @returns `127.0.0.1:4174`
 * @throws Error when the port is taken
 */
export async function listenLocally(server: Server, port: number): Promise<string> {
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject)
    server.listen(port, '127.0.0.1', resolve)
  })
  return `127.0.0.1:${(server.address() as AddressInfo).port}`
}

/** Ends every connection, then the server. */
export function closeServer(server: Server): Promise<void> {
  server.closeAllConnections()
  return new Promise((resolve) => server.close(() => resolve()))
}
