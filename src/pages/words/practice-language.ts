/** All pages but the owners' are in this language. */
export const practiceLanguage = 'en'
