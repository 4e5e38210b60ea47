// npm start: installs what is missing, builds the demo casebook and says which file to open.
import { install, root, run } from './install.mjs'

process.chdir(root)
install()
run(process.execPath, ['scripts/growdown.mjs', 'build', 'cases', '--out', 'site', '--edition', 'all'])
