/** The words for what a build means on a host: what to upload, what to delete, and what went since a consent ended. */
import type { Built } from '../apps/site/build-site.ts'
import type { HostChanges, HostPath } from '../apps/site/host-changes.ts'
import { counted } from './report.ts'

/** More lines than this are counted. */
const most = 12

/** Nothing where no folder for others was built. */
export function printHosts(hosts: readonly HostChanges[], site: string): string {
  if (hosts.length === 0) return ''
  const isSame = ({ upload, remove }: HostChanges) => upload.length + remove.length === 0
  const same = hosts.filter(isSame).map(({ folder }) => `${folder}/`)
  const lines = [
    ...listed(
      `To upload from ${site}:`,
      hosts.flatMap(({ upload }) => upload),
    ),
    ...listed(
      'To delete on the host:',
      hosts.flatMap(({ remove }) => remove),
    ),
    ...(same.length > 0 ? [`Nothing to upload and nothing to delete: ${same.join(', ')}`] : []),
  ]
  return lines.map((line) => `${line}\n`).join('')
}

function listed(head: string, paths: readonly HostPath[]): readonly string[] {
  if (paths.length === 0) return []
  const shown = paths.slice(0, most).map(({ path, files }) => {
    const count = path.endsWith('/') ? ` (${counted(files, 'file')})` : ''
    return `  ${path}${count}`
  })
  const more = paths.slice(most).reduce((sum, { files }) => sum + files, 0)
  return [head, ...shown, ...(more > 0 ? [`  and ${counted(more, 'more file')}`] : [])]
}

/** A line for each folder that rested on what has ended, and for editions that were built for it. */
export function printWithdrawn({ withdrawn, alsoBuilt, published }: Built): string {
  const standing = published?.paths.all ?? []
  const lines = withdrawn.map(({ folder, ended }) => {
    const isGone = !standing.some((path) => path.startsWith(`${folder}/`))
    return `No longer consented to (${ended.join('; ')}): ${folder}/ ${isGone ? 'is removed' : 'is made without it'}.`
  })
  const also = alsoBuilt.map(({ name }) => `Built as well, though not asked for: the ${name} edition.`)
  return [...lines, ...also].map((line) => `${line}\n`).join('')
}
