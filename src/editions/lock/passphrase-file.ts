/** Where the owners' passphrases and tokens stand, within the casebook. */
export const passphraseFile = 'passphrases.yaml'
