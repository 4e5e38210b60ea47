/** Works cited anywhere in the program, once each. Keys are used by `Evidence.source`. */
export interface Source {
  readonly cite: string
}

export const sources = {
  malone: { cite: 'Malone & Davies, Animals 2019; 9: 1017' },
  sixMethods: {
    cite: 'Journal of Equine Veterinary Science 2022; 121: 104195, comparison of six methods of measuring hoof angles',
  },
  tape: { cite: 'Journal of Equine Veterinary Science 2022; 115: 104028, tape at the hairline' },
  turner: { cite: 'Turner TA, Objective assessment of hoof balance, AAEP 1992 and later reprints' },
  dyson: { cite: 'Dyson 2011, sound feet: dorsal angle 52.2°, heel angle 43.5°' },
  stachurska: { cite: 'Stachurska 2008, Archiv Tierzucht 51: 531' },
  ogrady: { cite: "O'Grady 2018" },
  toeAngleAdvice: {
    cite: 'Hickman 45°, Stashak 45-50°, Butler 50-55°, Ovnicek 53-60°, Clayton mean 54°, as cited in the farriery press',
  },
  fleming: { cite: 'Fleming 1869, toe angle 50-60°' },
  trimStudy: {
    cite: 'Iranian Journal of Veterinary Surgery, article 79374: ten sound horses before and after trimming, front feet, radiographs',
  },
  lungwitz: { cite: 'Lungwitz & Adams, A Text-Book of Horseshoeing, 1897' },
  kolstrung: { cite: 'Kolstrung 2012, Medycyna Weterynaryjna 68: 426-429' },
  josseck: { cite: 'Josseck 1995, Equine Veterinary Journal 27: 175-182' },
  reilly: { cite: 'Reilly 1998, Equine Veterinary Journal Supplement 26: 51-57' },
  butlerHintz: { cite: 'Butler & Hintz 1977' },
  curtis: { cite: 'Curtis 2014, The Veterinary Journal' },
  aaep: { cite: 'American Association of Equine Practitioners, lameness scale 0-5' },
  henneke: { cite: 'Henneke 1983, body condition score 1-9' },
  carter: { cite: 'Carter 2009, crest score 0-5' },
  obel: { cite: 'Obel 1948, grades of laminitis I-IV' },
  farriersAct: { cite: 'Farriers (Registration) Act 1975, section 16 (Great Britain)' },
  soleThin: {
    cite: 'sole under 15 mm thin in light breeds; groove depth zero at the apex goes with a sole usually under 7 mm: second hand in the literature on radiographs of the foot',
  },
  meier: { cite: 'Meier 2021, BMC Veterinary Research 17: 16' },
  clayton: { cite: 'Clayton 2011, Australian Veterinary Journal 89: 305-311' },
  pattersonThompson: {
    cite: 'Patterson & Thompson 1971, Biometrika 58: 545, restricted maximum likelihood (title from memory)',
  },
  smyth: {
    cite: 'Smyth 2004, Statistical Applications in Genetics and Molecular Biology 3: 3, variances that differ between series (title from memory)',
  },
  schuirmann: {
    cite: 'Schuirmann 1987, Journal of Pharmacokinetics and Biopharmaceutics 15: 657, two one-sided tests of equivalence (title from memory)',
  },
  benjaminiHochberg: {
    cite: 'Benjamini & Hochberg 1995, Journal of the Royal Statistical Society B 57: 289, false discovery rate',
  },
  fieller: {
    cite: 'Fieller 1954, Journal of the Royal Statistical Society B 16: 175-185, intervals for a ratio (title from memory)',
  },
} as const satisfies Record<string, Source>

export type SourceKey = keyof typeof sources
