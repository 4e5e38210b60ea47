/** Growdown as a library, for Node. The same as in a browser, and casebooks that lie on the disk. */

export { diskFolder } from './build/disk/source-folder.ts'
export * from './library-browser.ts'
