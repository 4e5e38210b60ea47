/** Growdown as a library, for Node. The same as in a browser, and casebooks that lie on the disk. */
export * from './library-browser.ts'
export { diskFolder } from './publish/disk/disk.ts'
