/** The drafts of a practice in the browser's own store (IndexedDB). */
import { type DBSchema, type IDBPDatabase, openDB } from 'idb'
import { type YardDraft, yardDraft } from '../../../../src/yard/draft.ts'
import type { YardIndex } from '../../../../src/yard/payload.ts'
import { type Drafts, type Kept, type KeptDraft, StoreFull, type Unreadable } from './drafts.ts'
import { type Seal, type Sealed, sealOf } from './seal.ts'

/** Shape of what is locked in a record. Whatever has another one is kept, and read by the page that knows it. */
const shape = 1

interface DraftRecord extends Sealed {
  readonly id: string
  readonly shape: number
  readonly written: string
}
interface PictureRecord extends Sealed {
  readonly id: string
  readonly draft: string
}
interface Stores extends DBSchema {
  drafts: { key: string; value: DraftRecord }
  pictures: { key: string; value: PictureRecord; indexes: { draft: string } }
}

/** Written through to the disk before it counts as kept: a battery may die at any time. */
const durable: IDBTransactionOptions = { durability: 'strict' }

/** @throws where the browser refuses to keep anything */
export async function openDrafts(index: Pick<YardIndex, 'practice' | 'phoneKey'>): Promise<Drafts> {
  const seal = await sealOf(index.phoneKey)
  const database = await openDB<Stores>(`growdown ${index.practice}`, 1, {
    upgrade: (fresh) => {
      fresh.createObjectStore('drafts', { keyPath: 'id' })
      fresh.createObjectStore('pictures', { keyPath: 'id' }).createIndex('draft', 'draft')
    },
    blocking: (_current, _blocked, event) => (event.target as IDBDatabase).close(),
  })
  let isAsked = false
  const pictureId = (draft: string, sha256: string) => `${draft} ${sha256}`
  return {
    all: async () => sorted(await database.getAll('drafts'), seal),
    read: async (id) => {
      const record = await database.get('drafts', id)
      const found = record && (await opened(record, seal))
      return found && 'draft' in found ? found : null
    },
    write: async (kept) => {
      if (!isAsked) void askToPersist()
      isAsked = true
      const { id } = kept.draft
      const sealed = await seal.lock(`draft ${id}`, new TextEncoder().encode(JSON.stringify(kept)))
      const record = { id, shape, written: new Date().toISOString(), ...sealed }
      await put(database, (tx) => tx.objectStore('drafts').put(record))
    },
    remove: async (id) => {
      const tx = database.transaction(['drafts', 'pictures'], 'readwrite', durable)
      const pictures = tx.objectStore('pictures')
      const ids = await pictures.index('draft').getAllKeys(id)
      await Promise.all([
        tx.objectStore('drafts').delete(id),
        ...ids.map((one) => pictures.delete(one)),
        tx.done,
      ])
    },
    picture: async (draft, sha256) => {
      const id = pictureId(draft, sha256)
      const record = await database.get('pictures', id)
      return record ? seal.open(`picture ${id}`, record) : null
    },
    keepPicture: async (draft, sha256, bytes) => {
      const id = pictureId(draft, sha256)
      const record = { id, draft, ...(await seal.lock(`picture ${id}`, bytes)) }
      await put(database, (tx) => tx.objectStore('pictures').put(record))
    },
    dropPicture: (draft, sha256) => database.delete('pictures', pictureId(draft, sha256)),
    room: async () => {
      const { quota, usage } = (await navigator.storage?.estimate?.()) ?? {}
      return quota === undefined || usage === undefined ? null : Math.max(0, quota - usage)
    },
  }
}

/** So that a phone that runs short does not clear it unasked; a browser may refuse. */
async function askToPersist(): Promise<void> {
  try {
    await navigator.storage?.persist?.()
  } catch {
    // Kept as long as the browser pleases: the list of drafts asks for giving out early all the same.
  }
}

type Writing = ReturnType<typeof writing>
const writing = (database: IDBPDatabase<Stores>) =>
  database.transaction(['drafts', 'pictures'], 'readwrite', durable)

async function put(database: IDBPDatabase<Stores>, act: (tx: Writing) => Promise<unknown>): Promise<void> {
  const tx = writing(database)
  try {
    await Promise.all([act(tx), tx.done])
  } catch (error) {
    const name = error instanceof DOMException ? error.name : ''
    const cause = tx.error?.name ?? ''
    if ([name, cause].includes('QuotaExceededError')) throw new StoreFull()
    throw error
  }
}

async function opened(record: DraftRecord, seal: Seal): Promise<KeptDraft | Unreadable> {
  const { id, written } = record
  if (record.shape !== shape) return { id, written, why: 'shape' }
  const bytes = await seal.open(`draft ${id}`, record)
  if (bytes === null) return { id, written, why: 'key' }
  const kept: Omit<KeptDraft, 'draft'> & { draft: unknown } = JSON.parse(new TextDecoder().decode(bytes))
  const draft = yardDraft.safeParse(kept.draft)
  return draft.success ? { ...kept, draft: draft.data satisfies YardDraft } : { id, written, why: 'shape' }
}

async function sorted(records: readonly DraftRecord[], seal: Seal): Promise<Kept> {
  const all = await Promise.all(records.map((record) => opened(record, seal)))
  const drafts = all.filter((one): one is KeptDraft => 'draft' in one)
  return {
    drafts: drafts.toSorted((a, b) => (a.draft.changed < b.draft.changed ? 1 : -1)),
    unreadable: all.filter((one): one is Unreadable => !('draft' in one)),
  }
}
