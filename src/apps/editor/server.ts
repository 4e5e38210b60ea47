/**
 * Growdown in an editor, by the Language Server Protocol over two streams: what `check` says while a file is written,
 * its fixes, what may stand where, what words mean, and what was read last.
 */
import { dirname, join, relative, sep } from 'node:path'
import { fileURLToPath, pathToFileURL } from 'node:url'
import {
  CodeActionKind,
  type Connection,
  createConnection,
  DidChangeWatchedFilesNotification,
  type InitializeResult,
  TextDocumentSyncKind,
  TextDocuments,
} from 'vscode-languageserver/node'
import { TextDocument } from 'vscode-languageserver-textdocument'
import type { Diagnostic } from '../../casebook/diagnostic.ts'
import { grouped } from '../../casebook/grouped.ts'
import type { PlainDate } from '../../hoof/dates.ts'
import { casebookAround, isFile } from '../casebook-around.ts'
import { completionsAt } from './completion.ts'
import { definitionAt } from './definition.ts'
import { hintsIn } from './hints.ts'
import { hoverAt } from './hover.ts'
import { type LiveCasebook, liveCasebook } from './live-casebook.ts'
import { outlineOf } from './outline.ts'
import { fixesIn, problemOf } from './problems.ts'
import { symbolsOf } from './symbols.ts'
import { keepNumbers, type WrittenFile, writtenFile } from './written-file.ts'

export interface EditorStreams {
  readonly input: NodeJS.ReadableStream
  readonly output: NodeJS.WritableStream
  readonly version: string
  today(): PlainDate
}

/** A casebook with an open file in it. */
interface Opened {
  readonly root: string
  readonly casebook: LiveCasebook
  readonly numbers: ReturnType<typeof keepNumbers>
  /** What the editor was last told of each file, and what the fixes of it are. */
  told: ReadonlyMap<string, { readonly sent: string; readonly diagnostics: readonly Diagnostic[] }>
}

/** Answers until the editor asks to end. */
export function serveEditor({ input, output, version, today }: EditorStreams): Promise<void> {
  const connection = createConnection(input, output)
  const documents = new TextDocuments(TextDocument)
  const casebooks = new Map<string, Opened>()
  const can = { snippets: false, rename: false, watch: false }

  /** Where a document lies; null where no casebook is round it. */
  const placeOf = (uri: string): { readonly opened: Opened; readonly path: string } | null => {
    if (!uri.startsWith('file:')) return null
    const file = fileURLToPath(uri)
    const root = casebookAround(dirname(file), (folder) => {
      const practice = join(folder, 'practice.md')
      return isFile(practice) || documents.get(pathToFileURL(practice).href) !== undefined
    })
    const path = root === null ? '' : relative(root, file).split(sep).join('/')
    if (root === null || path.split('/').some((part) => part.startsWith('.') || part === 'node_modules'))
      return null
    const known = casebooks.get(root)
    const opened = known ?? {
      root,
      casebook: liveCasebook(root, today),
      numbers: keepNumbers(),
      told: new Map(),
    }
    casebooks.set(root, opened)
    return { opened, path }
  }
  const uriIn = ({ root }: Opened, path: string): string => {
    const uri = pathToFileURL(join(root, ...path.split('/'))).href
    // An editor may write the address of an open file in another way.
    return documents.all().find((one) => one.uri.startsWith('file:') && sameFile(one.uri, uri))?.uri ?? uri
  }
  const written = (uri: string): WrittenFile | null => {
    rest.wait()
    const place = placeOf(uri)
    const text = documents.get(uri)?.getText()
    if (!place || text === undefined) return null
    return writtenFile(place.opened.casebook, place.path, text, today(), place.opened.numbers)
  }

  const publish = (opened: Opened) => {
    const byFile = grouped(opened.casebook.diagnostics(), ({ file }) => file)
    const now = new Map<string, { sent: string; diagnostics: readonly Diagnostic[] }>()
    for (const file of new Set([...opened.told.keys(), ...byFile.keys()])) {
      const diagnostics = byFile.get(file) ?? []
      const problems = diagnostics.map(problemOf)
      const sent = JSON.stringify(problems)
      if (diagnostics.length > 0) now.set(file, { sent, diagnostics })
      if ((opened.told.get(file)?.sent ?? '[]') === sent) continue
      const uri = uriIn(opened, file)
      const document = documents.get(uri)
      void connection.sendDiagnostics({
        uri,
        diagnostics: problems,
        ...(document && { version: document.version }),
      })
    }
    opened.told = now
  }

  /** A folder that went away or may not be read: the editor goes on, and its log says why. */
  const fault = (error: unknown) =>
    connection.console.error(error instanceof Error ? error.message : String(error))
  const rest = whenQuiet((opened: Opened) => {
    if (opened.casebook.readOneMore()) return true
    publish(opened)
    return false
  }, fault)
  /** The file that is written is told of at once, the rest of its casebook whenever nothing else is to be done. */
  const changed = (opened: Opened, path: string) => {
    try {
      opened.casebook.horse(path.split('/')[0] ?? '')
      publish(opened)
      rest.add(opened)
    } catch (error) {
      fault(error)
    }
  }

  documents.onDidChangeContent(({ document }) => {
    const place = placeOf(document.uri)
    if (!place) return
    place.opened.casebook.change(place.path, document.getText())
    changed(place.opened, place.path)
  })
  documents.onDidClose(({ document }) => {
    const place = placeOf(document.uri)
    if (!place) return
    place.opened.casebook.close(place.path)
    changed(place.opened, place.path)
  })
  const onSaved = () => {
    for (const opened of casebooks.values()) {
      opened.casebook.saved()
      changed(opened, '')
    }
  }
  documents.onDidSave(onSaved)
  connection.onDidChangeWatchedFiles(onSaved)

  connection.onInitialize(({ capabilities }) => {
    can.snippets = capabilities.textDocument?.completion?.completionItem?.snippetSupport === true
    can.rename = capabilities.workspace?.workspaceEdit?.resourceOperations?.includes('rename') === true
    can.watch = capabilities.workspace?.didChangeWatchedFiles?.dynamicRegistration === true
    return abilities(version)
  })
  connection.onInitialized(() => {
    if (can.watch) void watchFiles(connection)
  })

  connection.onCompletion(({ textDocument, position }) => {
    const file = written(textDocument.uri)
    return file ? [...completionsAt(file, position, can.snippets)] : null
  })
  connection.onHover(({ textDocument, position }) => {
    const file = written(textDocument.uri)
    return file && hoverAt(file, position)
  })
  connection.languages.inlayHint.on(({ textDocument, range }) => {
    const file = written(textDocument.uri)
    return file ? [...hintsIn(file, range)] : null
  })
  connection.onDocumentSymbol(({ textDocument }) => {
    const text = placeOf(textDocument.uri) && documents.get(textDocument.uri)?.getText()
    return typeof text === 'string' ? [...symbolsOf(outlineOf(text))] : null
  })
  connection.onDefinition(({ textDocument, position }) => {
    const place = placeOf(textDocument.uri)
    const file = written(textDocument.uri)
    return place && file && definitionAt(file, position, (path) => uriIn(place.opened, path))
  })
  connection.onCodeAction(({ textDocument, range }) => {
    const place = placeOf(textDocument.uri)
    const told = place?.opened.told.get(place.path)?.diagnostics ?? []
    return place ? [...fixesIn(told, range, (path) => uriIn(place.opened, path), can.rename)] : null
  })

  documents.listen(connection)
  connection.listen()
  return new Promise((resolve) => {
    connection.onExit(resolve)
    input.on('end', resolve)
    input.on('close', resolve)
  })
}

const abilities = (version: string): InitializeResult => ({
  serverInfo: { name: 'growdown', version },
  capabilities: {
    textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental, save: true },
    completionProvider: { triggerCharacters: [' ', ',', '[', '{', '#'] },
    hoverProvider: true,
    inlayHintProvider: true,
    documentSymbolProvider: true,
    definitionProvider: true,
    codeActionProvider: { codeActionKinds: [CodeActionKind.QuickFix] },
  },
})

/** Asks the editor to say when a file changes by another hand. */
const watchFiles = (connection: Connection) =>
  connection.client.register(DidChangeWatchedFilesNotification.type, { watchers: [{ globPattern: '**/*' }] })

/** How long nobody must have asked for anything before work goes on that can wait, milliseconds. */
const quietFor = 40

/** Work that is done a piece at a time while an editor asks for nothing. `piece` says whether there is more. */
function whenQuiet<T>(piece: (of: T) => boolean, onFault: (error: unknown) => void) {
  const waiting = new Set<T>()
  let timer: NodeJS.Timeout | undefined
  let isQuiet = false
  const goOn = () => {
    const [next] = waiting
    if (next === undefined || !isQuiet) return
    try {
      if (!piece(next)) waiting.delete(next)
    } catch (error) {
      waiting.delete(next)
      onFault(error)
    }
    setImmediate(goOn)
  }
  const wait = () => {
    isQuiet = false
    clearTimeout(timer)
    if (waiting.size === 0) return
    timer = setTimeout(() => {
      isQuiet = true
      goOn()
    }, quietFor)
  }
  return {
    add: (one: T) => {
      waiting.add(one)
      wait()
    },
    /** Someone asks for something. */
    wait,
  }
}

const sameFile = (one: string, other: string): boolean => {
  if (one === other) return true
  try {
    return fileURLToPath(one) === fileURLToPath(other)
  } catch {
    return false
  }
}
